#pragma once
// What a charge is for, who did it and how it was put right: words of case files and of rules, each a type of its own.

#include "values/names.h"

#include <cstdint>
#include <string_view>

namespace wearline {

enum class ChargeKind : std::uint8_t { unknown, damage, cleaning, rent, fee, utility, keys, disposal, other };
inline constexpr Named<ChargeKind> charge_kinds[] = {
    {"damage", ChargeKind::damage},     {"cleaning", ChargeKind::cleaning}, {"rent", ChargeKind::rent},
    {"fee", ChargeKind::fee},           {"utility", ChargeKind::utility},   {"keys", ChargeKind::keys},
    {"disposal", ChargeKind::disposal}, {"other", ChargeKind::other}};
constexpr std::string_view name_of(ChargeKind kind) { return name_in(charge_kinds, kind); }

/// Who or what did it. The wear catalogue has a label for each.
enum class ChargeCause : std::uint8_t {
  unknown,
  tenant,
  guest,
  pet,
  landlord,
  age,
  building,
  neighbor,
  third_party,
  nature
};
inline constexpr Named<ChargeCause> charge_causes[] = {
    {"tenant", ChargeCause::tenant},     {"guest", ChargeCause::guest},
    {"pet", ChargeCause::pet},           {"landlord", ChargeCause::landlord},
    {"age", ChargeCause::age},           {"building", ChargeCause::building},
    {"neighbor", ChargeCause::neighbor}, {"third-party", ChargeCause::third_party},
    {"nature", ChargeCause::nature}};
constexpr std::string_view name_of(ChargeCause cause) { return name_in(charge_causes, cause); }
/// A cause the tenant answers for: their own hand, a guest, a pet.
constexpr bool is_tenants(ChargeCause cause) {
  return cause == ChargeCause::tenant || cause == ChargeCause::guest || cause == ChargeCause::pet;
}

/// How it was put right. `none` stands in the wear catalogue alone: nothing is put right (rent, a fee).
enum class ChargeRemedy : std::uint8_t { unknown, replace, repair, clean, dispose, none };
inline constexpr Named<ChargeRemedy> charge_remedies[] = {{"replace", ChargeRemedy::replace},
                                                          {"repair", ChargeRemedy::repair},
                                                          {"clean", ChargeRemedy::clean},
                                                          {"dispose", ChargeRemedy::dispose}};
constexpr std::string_view name_of(ChargeRemedy remedy) { return name_in(charge_remedies, remedy); }

} // namespace wearline
