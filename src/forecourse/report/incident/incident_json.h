#pragma once

#include <cstdint>
#include <string>

#include "forecourse/report/json_document.h"
#include "forecourse/studies/incident/incident.h"

namespace forecourse::report {

[[nodiscard]] Json spread_json(const studies::Spread& spread);
/// Sixteen hexadecimal digits.
[[nodiscard]] std::string hash_text(std::uint64_t hash);

[[nodiscard]] Json jet_json(const studies::JetRow& jet);
[[nodiscard]] Json pack_json(const studies::PackAndColumn& pack);
[[nodiscard]] Json pool_json(const studies::PoolTold& pool);
[[nodiscard]] Json crack_json(const studies::CrackTold& crack);
[[nodiscard]] Json drive_off_json(const studies::DriveOffTold& told);
[[nodiscard]] Json fire_json(const studies::FireTold& fire);
[[nodiscard]] Json overfill_json(const studies::OverfillTold& told);
[[nodiscard]] Json monte_carlo_json(const studies::IncidentSpread& spread);

}  // namespace forecourse::report
