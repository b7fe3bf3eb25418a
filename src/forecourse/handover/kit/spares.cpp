#include "forecourse/handover/kit/spares.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "forecourse/handover/kit/part_words.h"
#include "forecourse/site/consistency/supply.h"

namespace forecourse::handover {
namespace {

using Ids = std::vector<std::string>;

bool has(const Ids& ids, const std::string& id) { return std::find(ids.begin(), ids.end(), id) != ids.end(); }

/// A hose and what it draws.
struct HosePoint {
  std::string id;
  Ids products;
  const site::Dispenser* dispenser = nullptr;
};

/// Which hoses are shut while a part is out.
class Outage {
 public:
  explicit Outage(const site::Site& site) : graph_(site), supply_(site, graph_) {
    for (const site::Dispenser& dispenser : site.dispensers) {
      for (const site::Hose& hose : dispenser.hoses)
        hoses_.push_back({hose.id.text, site::products_of(hose), &dispenser});
    }
  }

  [[nodiscard]] Ids hoses_without(const StationPart& part, Serves serves) const {
    if (part.hose != nullptr) return serves == Serves::nothing ? Ids{} : Ids{part.hose->id.text};
    if (serves == Serves::inlet && part.inlet != nullptr) return behind(*part.inlet);
    if (serves == Serves::pump) return without_pump(part.owner);
    return {};
  }

  /// Products of which every hose is among these.
  [[nodiscard]] Ids products_out(const Ids& shut) const {
    std::map<std::string, bool> out;
    for (const HosePoint& hose : hoses_) {
      for (const std::string& product : hose.products) {
        const auto [known, added] = out.emplace(product, true);
        known->second = known->second && has(shut, hose.id);
      }
    }
    Ids ids;
    for (const auto& [product, all] : out) {
      if (all) ids.push_back(product);
    }
    return ids;
  }

  [[nodiscard]] int hoses() const { return static_cast<int>(hoses_.size()); }

 private:
  [[nodiscard]] Ids behind(const site::Inlet& inlet) const {
    Ids out;
    for (const site::InletPlace& place : supply_.inlets()) {
      if (place.inlet != &inlet) continue;
      for (const HosePoint& hose : hoses_) {
        if (hose.dispenser == place.dispenser && has(hose.products, inlet.product.text)) out.push_back(hose.id);
      }
    }
    return out;
  }

  /// Whether a pump other than this one brings a product to a dispenser.
  [[nodiscard]] bool is_fed(const HosePoint& hose, const std::string& product, const std::string& without) const {
    for (const site::InletPlace* inlet : supply_.inlets_of(*hose.dispenser)) {
      if (inlet->inlet->product.text != product) continue;
      for (const site::Source& source : supply_.sources()) {
        const bool off = source.pump->running && !*source.pump->running;
        if (source.pump->id.text != without && !off && site::Supply::reaches(source, *inlet)) return true;
      }
    }
    return false;
  }

  [[nodiscard]] Ids without_pump(const std::string& pump) const {
    Ids out;
    for (const HosePoint& hose : hoses_) {
      const auto stops = [&](const std::string& product) {
        return is_fed(hose, product, "") && !is_fed(hose, product, pump);
      };
      if (std::any_of(hose.products.begin(), hose.products.end(), stops)) out.push_back(hose.id);
    }
    return out;
  }

  site::LineGraph graph_;
  site::Supply supply_;
  std::vector<HosePoint> hoses_;
};

std::string joined(const Ids& ids, const char* last) {
  std::string out;
  for (std::size_t i = 0; i < ids.size(); ++i) {
    if (i > 0) out += i + 1 == ids.size() ? last : ", ";
    out += ids[i];
  }
  return out;
}

std::string sentence(std::string text) {
  if (text.empty()) return text;
  if (text.front() >= 'a' && text.front() <= 'z') text.front() = static_cast<char>(text.front() - 'a' + 'A');
  return text + ".";
}

std::string reason_of(const Spare& spare, const PartKind& kind, const StationPart& worst) {
  const auto shut = static_cast<int>(spare.hoses.size());
  std::string out;
  if (!spare.products.empty()) {
    out = fmt::format("until it is replaced no hose of {} is left ({} of {} hoses)", joined(spare.products, " and "),
                      shut, spare.hoses_of_station);
  } else if (shut > 0) {
    out = fmt::format("until it is replaced {} of {} hoses {} shut", shut, spare.hoses_of_station,
                      shut == 1 ? "is" : "are");
  } else if (kind.serves == Serves::pump) {
    out = "another pump goes on alone, with less flow";
  }
  if (!out.empty()) out = sentence(std::move(out));
  if (shut > 0 && spare.hoses.size() < 2)
    out = sentence("until it is replaced hose " + spare.hoses.front() + " is shut");
  const std::string more = sentence(std::string(kind.without_it));
  if (!more.empty()) out += (out.empty() ? "" : " ") + more;
  if (out.empty()) out = sentence(worst.subject + " is out until it is replaced");
  return out;
}

/// How bad it is that parts of a kind fail where they shut these hoses.
Consequence consequence_of(const PartKind& kind, const Spare& spare) {
  if (!spare.products.empty()) return Consequence::product_stops;
  if (kind.fails != Consequence::product_stops) return kind.fails;
  if (kind.kind == "leak-detector") return Consequence::leak_unseen;
  return spare.hoses.empty() ? Consequence::other : Consequence::hoses_stop;
}

Spare spare_of(std::vector<std::size_t> rows, const std::vector<const StationPart*>& parts, const PartKind& kind,
               const Outage& outage) {
  Spare out;
  out.rows = std::move(rows);
  out.hoses_of_station = outage.hoses();
  const StationPart* worst = parts.front();
  for (const StationPart* part : parts) {
    Ids hoses = outage.hoses_without(*part, kind.serves);
    Ids products = outage.products_out(hoses);
    const bool more = products.size() > out.products.size() ||
                      (products.size() == out.products.size() && hoses.size() > out.hoses.size());
    if (!more) continue;
    worst = part;
    out.hoses = std::move(hoses);
    out.products = std::move(products);
  }
  out.worst = worst->subject;
  out.consequence = consequence_of(kind, out);
  out.reason = reason_of(out, kind, *worst);
  return out;
}

/// Rows of parts of one kind and size, for whichever fuel: one spare serves them.
std::vector<std::vector<std::size_t>> alike(const std::vector<KitRow>& rows) {
  std::vector<std::vector<std::size_t>> out;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const PartKind* kind = find_part_kind(rows[i].kind);
    if (kind == nullptr || !kind->is_spare) continue;
    const auto same = [&](const std::vector<std::size_t>& group) {
      const KitRow& other = rows[group.front()];
      return other.kind == rows[i].kind && other.what == rows[i].what && other.sizes == rows[i].sizes;
    };
    const auto found = std::find_if(out.begin(), out.end(), same);
    if (found == out.end()) {
      out.push_back({i});
    } else {
      found->push_back(i);
    }
  }
  return out;
}

}  // namespace

std::vector<Spare> spares_of(const site::Site& site, const std::vector<StationPart>& parts,
                             const std::vector<KitRow>& rows) {
  const Outage outage(site);
  std::map<std::string, const StationPart*> by_path;
  for (const StationPart& part : parts) by_path.emplace(part.path, &part);
  std::vector<Spare> out;
  for (std::vector<std::size_t>& group : alike(rows)) {
    const PartKind& kind = *find_part_kind(rows[group.front()].kind);
    std::vector<const StationPart*> of_group;
    for (const std::size_t row : group) {
      for (const std::string& path : rows[row].parts) {
        const StationPart* part = by_path.at(path);
        if (!is_set_in_parts(*part)) of_group.push_back(part);
      }
    }
    if (!of_group.empty()) out.push_back(spare_of(std::move(group), of_group, kind, outage));
  }
  std::stable_sort(out.begin(), out.end(), [](const Spare& a, const Spare& b) {
    return a.consequence != b.consequence ? a.consequence < b.consequence : a.hoses.size() > b.hoses.size();
  });
  return out;
}

}  // namespace forecourse::handover
