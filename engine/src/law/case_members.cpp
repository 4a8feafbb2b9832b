#include "law/case_members.h"

namespace wearline {

namespace {

/// Nobody stays a season for a year.
FactState tenancy_kind(const Case& c) {
  const Tenancy& t = c.tenancy;
  FactState s = FactState::of(t.kind);
  const auto& out = t.left();
  if (t.kind.empty() && t.began && out && out->earliest - t.began->latest >= days{365}) s.not_text = "seasonal";
  return s;
}

struct FactReader {
  std::string_view at;
  FactState (*read)(const Case&);
};
constexpr FactReader fact_readers[] = {
    {"/locality", [](const Case& c) { return FactState::of(c.locality); }},
    {"/side", [](const Case& c) { return FactState::of(c.side); }},
    {"/tenancy/kind", tenancy_kind},
    {"/tenancy/monthlyRent", [](const Case& c) { return FactState::of(c.tenancy.monthly_rent); }},
    {"/tenancy/landlordUnits", [](const Case& c) { return FactState::of(c.tenancy.landlord_units); }},
    {"/tenancy/buildingUnits", [](const Case& c) { return FactState::of(c.tenancy.building_units); }},
    {"/tenancy/ownerOccupied", [](const Case& c) { return FactState::of(c.tenancy.owner_occupied); }},
    {"/records/moveInChecklist/made", [](const Case& c) { return FactState::of(c.records.move_in.made); }},
    {"/records/moveInChecklist/signedByBoth",
     [](const Case& c) { return FactState::of(c.records.move_in.signed_by_both); }},
    {"/records/moveInChecklist/tenantHasCopy",
     [](const Case& c) { return FactState::of(c.records.move_in.tenant_has_copy); }},
    {"/records/moveOutChecklist/made", [](const Case& c) { return FactState::of(c.records.move_out.made); }},
    {"/records/moveOutChecklist/signedByBoth",
     [](const Case& c) { return FactState::of(c.records.move_out.signed_by_both); }},
    {"/records/moveOutChecklist/tenantHasCopy",
     [](const Case& c) { return FactState::of(c.records.move_out.tenant_has_copy); }},
    {"/records/preMoveOutInspection/offered",
     [](const Case& c) { return FactState::of(c.records.inspection_offered); }},
    {"/records/preMoveOutInspection/requested",
     [](const Case& c) { return FactState::of(c.records.inspection_requested); }},
    {"/records/preMoveOutInspection/held", [](const Case& c) { return FactState::of(c.records.inspection_held); }},
    {"/records/photosAtMoveIn", [](const Case& c) { return FactState::of(c.records.photos_at_move_in); }},
    {"/records/photosAtMoveOut", [](const Case& c) { return FactState::of(c.records.photos_at_move_out); }},
};

struct EventReader {
  std::string_view at;
  const std::optional<DaySpan>* (*read)(const Case&);
};
constexpr EventReader event_readers[] = {
    {"/tenancy/began", [](const Case& c) { return &c.tenancy.began; }},
    {"/tenancy/ended", [](const Case& c) { return &c.tenancy.ended; }},
    {"/tenancy/possessionReturned", [](const Case& c) { return &c.tenancy.possession_returned; }},
    {"/tenancy/forwardingAddressGiven", [](const Case& c) { return &c.tenancy.forwarding_address_given; }},
    {"/tenancy/rentPaidThrough", [](const Case& c) { return &c.tenancy.rent_paid_through; }},
    {"/deposits/0/paid", [](const Case& c) { return c.deposits.empty() ? nullptr : &c.deposits.front().paid; }},
    {"/statement/dated", [](const Case& c) { return &c.statement.dated; }},
    {"/statement/sent", [](const Case& c) { return &c.statement.sent; }},
    {"/statement/received", [](const Case& c) { return &c.statement.received; }},
    {"/statement/refundSent", [](const Case& c) { return &c.statement.refund_sent; }},
};

} // namespace

FactState (*fact_reader(std::string_view at))(const Case&) {
  for (const auto& reader : fact_readers)
    if (reader.at == at) return reader.read;
  return nullptr;
}

const std::optional<DaySpan>* (*event_reader(std::string_view at))(const Case&) {
  for (const auto& reader : event_readers)
    if (reader.at == at) return reader.read;
  return nullptr;
}

} // namespace wearline
