#pragma once
// Writing JSON text straight into a string: the result is written once, front to back, so no document is built for it.
// (nlohmann_json builds a tree first; for a 40-line case that alone costs more than the whole judgement.)

#include <cstdint>
#include <cstring>
#include <string>
#include <string_view>

namespace wearline {

class JsonOut {
public:
  void reserve(std::size_t bytes) { out_.reserve(bytes); }
  JsonOut& object() { return open('{'); }
  JsonOut& array() { return open('['); }
  JsonOut& end_object() { return close('}'); }
  JsonOut& end_array() { return close(']'); }
  /// A member's name; our own names, which need no escaping.
  JsonOut& key(std::string_view name) {
    char* to = grow(name.size() + 4);
    if (!fresh_) *to++ = ',';
    *to++ = '"';
    std::memcpy(to, name.data(), name.size());
    to += name.size();
    *to++ = '"';
    *to++ = ':';
    end_at(to);
    fresh_ = true;
    return *this;
  }
  /// A member's name that came from outside or from the rules.
  JsonOut& any_key(std::string_view name) {
    comma();
    quoted(name);
    out_ += ':';
    fresh_ = true;
    return *this;
  }
  JsonOut& text(std::string_view value) {
    comma();
    quoted(value);
    return *this;
  }
  JsonOut& number(std::int64_t value) { return raw(std::to_string(value)); }
  JsonOut& boolean(bool value) { return raw(value ? "true" : "false"); }
  JsonOut& null() { return raw("null"); }
  JsonOut& raw(std::string_view json) {
    comma();
    out_ += json;
    return *this;
  }
  JsonOut& pair(std::string_view name, std::string_view value) { return key(name).text(value); }
  std::string take() { return std::move(out_); }

private:
  JsonOut& open(char bracket) {
    comma();
    out_ += bracket;
    fresh_ = true;
    return *this;
  }
  JsonOut& close(char bracket) {
    out_ += bracket;
    fresh_ = false;
    return *this;
  }
  void comma() {
    if (!fresh_) out_ += ',';
    fresh_ = false;
  }
  void quoted(std::string_view value);
  /// Room for `most` more bytes; end_at() gives back what was not written.
  char* grow(std::size_t most) {
    const std::size_t size = out_.size();
    out_.resize(size + most);
    return out_.data() + size;
  }
  void end_at(const char* to) { out_.resize(static_cast<std::size_t>(to - out_.data())); }

  std::string out_;
  bool fresh_ = true;
};

} // namespace wearline
