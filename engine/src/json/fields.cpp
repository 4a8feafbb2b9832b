#include "json/fields.h"

#include "values/ascii.h"

#include <algorithm>

namespace wearline {

std::optional<Share> parse_decimal(std::string_view text) {
  Share share{0, 1};
  std::size_t at = 0;
  for (; at < text.size() && is_digit(text[at]); ++at) {
    if (at == 6) return std::nullopt;
    share.num = share.num * 10 + (text[at] - '0');
  }
  if (at == 0) return std::nullopt;
  if (at == text.size()) return share;
  if (text[at++] != '.' || at == text.size() || text.size() - at > 9) return std::nullopt;
  for (; at < text.size(); ++at) {
    if (text[at] < '0' || text[at] > '9') return std::nullopt;
    share.num = share.num * 10 + (text[at] - '0');
    share.den *= 10;
  }
  return share;
}

Fields::Fields(const Json& json, std::string at, Faults& faults) : json_(&json), at_(std::move(at)), faults_(&faults) {
  if (!json.is_object()) faults.push_back({"wrong-type", at_, "This must be an object, { ... }.", ""});
}

const Json* Fields::get(std::string_view name) {
  asked_.push_back(name);
  if (!json_->is_object()) return nullptr;
  const auto found = json_->find(name);
  return found == json_->end() || found->is_null() ? nullptr : &*found;
}

std::string Fields::pointer(std::string_view name) const { return at_ + '/' + pointer_segment(name); }

void Fields::fault(std::string code, std::string_view name, std::string text) const {
  faults_->push_back({std::move(code), pointer(name), std::move(text), ""});
}

std::string Fields::text(std::string_view name) {
  const Json* json = get(name);
  if (!json) return {};
  if (const auto* s = json->get_ptr<const std::string*>()) return *s;
  fault("wrong-type", name, "This must be text in quotation marks.");
  return {};
}

std::string Fields::required_text(std::string_view name) {
  std::string value = text(name);
  if (value.empty()) fault("missing-member", name, "This member is needed here.");
  return value;
}

Localized Fields::localized(std::string_view name) {
  Localized out;
  const Json* json = get(name);
  if (!json) return out;
  if (const auto* english = json->get_ptr<const std::string*>()) {
    out.en = *english;
    return out;
  }
  Fields both(*json, pointer(name), *faults_);
  out.en = both.text("en");
  out.es = both.text("es");
  both.done();
  return out;
}

Localized Fields::required_localized(std::string_view name) {
  Localized value = localized(name);
  if (value.empty()) fault("missing-member", name, "This member is needed here.");
  return value;
}

Tri Fields::yes_no(std::string_view name) {
  const Json* json = get(name);
  if (!json) return Tri::unknown;
  if (const auto* b = json->get_ptr<const bool*>()) return *b;
  fault("wrong-type", name, "This must be true or false.");
  return Tri::unknown;
}

bool Fields::flag(std::string_view name, bool otherwise) { return yes_no(name).yes_or(otherwise); }

std::optional<std::int64_t> Fields::whole(std::string_view name) {
  const Json* json = get(name);
  if (!json) return std::nullopt;
  if (const auto* u = json->get_ptr<const Json::number_unsigned_t*>(); u && *u <= 1'000'000'000)
    return static_cast<std::int64_t>(*u);
  fault("wrong-type", name, "This must be a whole number from 0 to 1000000000.");
  return std::nullopt;
}

std::optional<Share> Fields::decimal(std::string_view name) {
  const std::string value = text(name);
  if (value.empty()) return std::nullopt;
  const auto share = parse_decimal(value);
  if (!share) fault("bad-number", name, "This must be a decimal number in quotation marks, such as \"1.5\".");
  return share;
}

std::optional<Money> Fields::money(std::string_view name) {
  const std::string value = text(name);
  if (value.empty()) return std::nullopt;
  const auto sum = Money::parse(value);
  if (!sum) fault("bad-amount", name, "This must be an amount in quotation marks, such as \"125.00\".");
  return sum;
}

std::optional<Day> Fields::day(std::string_view name) {
  const std::string value = text(name);
  if (value.empty()) return std::nullopt;
  const auto day = parse_day(value);
  if (!day) fault("bad-date", name, "This must be a date that exists, such as \"2026-07-31\".");
  return day;
}

std::vector<std::string> Fields::texts(std::string_view name) {
  std::vector<std::string> out;
  const Json* json = get(name);
  if (!json) return out;
  if (!json->is_array()) {
    fault("wrong-type", name, "This must be a list of texts.");
    return out;
  }
  for (const Json& item : *json) {
    if (const auto* s = item.get_ptr<const std::string*>()) out.push_back(*s);
    else fault("wrong-type", name, "This must be a list of texts.");
  }
  return out;
}

std::vector<Fields> Fields::objects(std::string_view name) {
  std::vector<Fields> out;
  const Json* json = get(name);
  if (!json) return out;
  if (!json->is_array()) {
    fault("wrong-type", name, "This must be a list, [ ... ].");
    return out;
  }
  out.reserve(json->size());
  for (std::size_t i = 0; i < json->size(); ++i)
    out.emplace_back((*json)[i], pointer(name) + '/' + std::to_string(i), *faults_);
  return out;
}

std::optional<Fields> Fields::object(std::string_view name) {
  const Json* json = get(name);
  if (!json) return std::nullopt;
  return Fields(*json, pointer(name), *faults_);
}

void Fields::ignore(std::initializer_list<std::string_view> names) { asked_.insert(asked_.end(), names); }

void Fields::done() const {
  if (!json_->is_object()) return;
  for (const auto& item : json_->items())
    if (std::find(asked_.begin(), asked_.end(), std::string_view(item.key())) == asked_.end())
      faults_->push_back(
          {"unknown-member", pointer(item.key()), "\"" + item.key() + "\" is not a name that belongs here.", ""});
}

} // namespace wearline
