#pragma once
// Writing JSON text straight into a string: the result is written once, front to back, so no document is built for it.
// (nlohmann_json builds a tree first; for a 40-line case that alone costs more than the whole judgment.)

#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>

namespace wearline {

class JsonOut {
public:
  void reserve(std::size_t bytes) { out_.resize(bytes); }
  JsonOut& object() { return open('{'); }
  JsonOut& array() { return open('['); }
  JsonOut& end_object() { return close('}'); }
  JsonOut& end_array() { return close(']'); }
  /// A member's name; our own names, which need no escaping.
  JsonOut& key(std::string_view name) {
    own(name);
    put(':');
    fresh_ = true;
    return *this;
  }
  /// A member's name that came from outside or from the rules.
  JsonOut& any_key(std::string_view name) {
    text(name);
    put(':');
    fresh_ = true;
    return *this;
  }
  JsonOut& text(std::string_view value);
  /// Text of our own that needs no escaping: a sum, a day, a code.
  JsonOut& own(std::string_view value) {
    char* to = room(value.size() + 4);
    if (!fresh_) *to++ = ',';
    fresh_ = false;
    *to++ = '"';
    std::memcpy(to, value.data(), value.size());
    to += value.size();
    *to++ = '"';
    end_at(to);
    return *this;
  }
  JsonOut& own(std::string_view name, std::string_view value) { return key(name).own(value); }
  JsonOut& number(std::int64_t value) { return raw(std::to_string(value)); }
  JsonOut& boolean(bool value) { return raw(value ? "true" : "false"); }
  JsonOut& null() { return raw("null"); }
  JsonOut& raw(std::string_view json) {
    comma();
    char* to = room(json.size());
    std::memcpy(to, json.data(), json.size());
    end_at(to + json.size());
    return *this;
  }
  JsonOut& pair(std::string_view name, std::string_view value) { return key(name).text(value); }
  std::string take() {
    out_.resize(used_);
    return std::move(out_);
  }

private:
  JsonOut& open(char bracket) {
    comma();
    put(bracket);
    fresh_ = true;
    return *this;
  }
  JsonOut& close(char bracket) {
    put(bracket);
    fresh_ = false;
    return *this;
  }
  void comma() {
    if (!fresh_) put(',');
    fresh_ = false;
  }
  void put(char c) {
    *room(1) = c;
    ++used_;
  }
  /// Room for `most` more bytes; end_at() says how many were written.
  char* room(std::size_t most) {
    if (out_.size() - used_ < most) out_.resize(out_.size() + out_.size() / 2 + most);
    return out_.data() + used_;
  }
  void end_at(const char* to) { used_ = static_cast<std::size_t>(to - out_.data()); }

  std::string out_; ///< with room at its end
  std::size_t used_ = 0;
  bool fresh_ = true;
};

} // namespace wearline
