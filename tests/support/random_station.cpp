#include "support/random_station.h"

#include <fmt/format.h>

#include <random>
#include <vector>

namespace forecourse::test {
namespace {

struct Product {
  std::string id;
  const char* kind;
  const char* density;
  const char* viscosity;
  bool gasoline;
};

class Writer {
 public:
  explicit Writer(std::uint64_t seed) : draws_(seed * 7919 + 17), seed_(seed) {}

  std::string text() {
    choose();
    head();
    for (std::size_t i = 0; i < tanks_; ++i) tank(i);
    for (std::size_t i = 0; i < tanks_; ++i) pump(i);
    for (const Product& product : products_) lines(product);
    if (second_) line("regular-second", fmt::format("P{}", tanks_), root_of_regular_, between(20, 60), false, "");
    for (std::size_t i = 0; i < dispensers_; ++i) dispenser(i);
    rest();
    return std::move(out_);
  }

 private:
  double uniform() { return static_cast<double>(draws_() >> 11) * 0x1.0p-53; }
  double between(double low, double high) { return low + (high - low) * uniform(); }
  bool happens(double share) { return uniform() < share; }
  std::size_t count(std::size_t low, std::size_t high) {
    return low + static_cast<std::size_t>(uniform() * static_cast<double>(high - low + 1));
  }
  template <class... Args>
  void add(fmt::format_string<Args...> format, Args&&... args) {
    out_ += fmt::format(format, std::forward<Args>(args)...);
    out_ += '\n';
  }

  void choose() {
    tanks_ = count(1, 4);
    dispensers_ = count(1, 8);
    second_ = tanks_ == 4 || (tanks_ == 2 && happens(0.2));
    const std::vector<Product> all{{"regular", "gasoline-e10", "738 kg/m3", "0.52 mPa.s", true},
                                   {"premium", "gasoline-e10", "748 kg/m3", "0.55 mPa.s", true},
                                   {"diesel", "diesel-b5", "840 kg/m3", "3.6 mPa.s", false}};
    const std::size_t products = second_ ? tanks_ - 1 : tanks_;
    products_.assign(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(products));
    served_.assign(products, std::vector<bool>(dispensers_, true));
    for (std::size_t p = 1; p < products; ++p) {
      for (std::size_t d = 0; d < dispensers_; ++d) served_[p][d] = happens(0.6);
      served_[p][count(0, dispensers_ - 1)] = true;
    }
    two_hoses_ = happens(0.7);
    lumped_ = happens(0.1);
    limiter_ = happens(0.4);
    heights_ = happens(0.9);
    far_ = happens(0.3);
  }

  void head() {
    add("format = 1\n[site]\nname = \"Station {} (invented)\"\ndisplay = \"{}\"", seed_, happens(0.5) ? "us" : "si");
    if (happens(0.9)) add("ground_temperature = \"{:.1f} degF\"", between(42, 75));
    for (const Product& product : products_) {
      add("[[product]]\nid = \"{}\"\nkind = \"{}\"\ndensity = \"{}\"\nviscosity = \"{}\"", product.id, product.kind,
          product.density, product.viscosity);
      if (product.gasoline && happens(0.8)) add("reid_vapor_pressure = \"9 psi\"");
    }
  }

  const Product& product_of(std::size_t tank) const { return tank < products_.size() ? products_[tank] : products_[0]; }

  void tank(std::size_t i) {
    const double diameter = between(92, 120);
    const double length = between(20, 34);
    const bool shaped = happens(0.94);
    add("[[tank]]\nid = \"T{}\"\nproduct = \"{}\"", i + 1, product_of(i).id);
    if (shaped) {
      const std::string pitch =
          happens(0.6) ? fmt::format(", pitch = \"{:.2f} %\", low_end = \"fill\"", between(0.2, 1.0)) : "";
      add("shape = {{ kind = \"horizontal-cylinder\", inside_diameter = \"{:.1f} in\", length = \"{:.2f} ft\", heads = "
          "\"flat\"{} }}",
          diameter, length, pitch);
    }
    add("bottom_elevation = \"-{:.2f} ft\"", between(13.5, 15));
    const std::string water = happens(0.5) ? fmt::format(", water = \"{:.2f} in\"", between(0.5, 4)) : "";
    const std::string temperature = happens(0.5) ? fmt::format(", temperature = \"{:.1f} degF\"", between(45, 59)) : "";
    add("reading = {{ depth = \"{:.2f} in\", at = \"{:.1f} ft\"{}{} }}", diameter * between(0.25, 0.75), between(4, 16),
        water, temperature);
    if (happens(0.6)) {
      add("sump = {{ kind = \"round\", diameter = \"{:.1f} in\", depth = \"{:.1f} in\", parts_share = \"{:.0f} %\", "
          "sensor_height = \"2 in\", lowest_seal = \"{:.1f} in\" }}",
          between(36, 48), between(30, 48), between(2, 12), between(6, 14));
    }
    if (happens(0.7)) add("overfill_alarm = {{ at_share = \"{:.0f} %\", heard_at_fill = true }}", between(86, 91));
    if (happens(0.5)) add("vapor_return = {{ kind = \"two-point\" }}");
    fill(i, diameter);
    if (happens(0.7)) {
      add("  [[tank.vent]]\n  id = \"V{}\"\n  outlet_elevation = \"12 ft\"\n  pipe = {{ length = \"40 ft\", bore = "
          "\"2.07 in\" }}\n  "
          "valve = {{ opens_at = \"{:.1f} inH2O\", vacuum_opens_at = \"{:.1f} inH2O\" }}",
          i + 1, between(2.5, 6), between(6, 10));
    }
  }

  void fill(std::size_t i, double diameter) {
    if (!happens(0.85)) return;
    add("  [[tank.fill]]\n  id = \"F{}\"\n  drop_tube = {{ length = \"13 ft\", bore = \"4 in\", roughness = \"0.045 "
        "mm\" }}",
        i + 1);
    if (happens(0.85)) add("  at = \"{:.2f} ft\"", between(1, 4));
    if (happens(0.8)) add("  spill_container = {{ volume = \"{:.1f} gal\" }}", between(4, 12));
    if (happens(0.7)) {
      const double closes = between(0.88, 0.95);
      add("  overfill_valve = {{ restricts_at = \"{:.2f} in\", closes_at = \"{:.2f} in\", restricted = \"30 gpm\", "
          "closed = \"0 gpm\" }}",
          diameter * (closes - 0.04), diameter * closes);
    }
  }

  void pump(std::size_t i) {
    add("[[pump]]\nid = \"P{0}\"\ntank = \"T{0}\"\ncurve = {{ shutoff = \"{1:.2f} psi\", per_flow_squared = \"{2:.5f} "
        "psi/gpm^2\" }}",
        i + 1, between(27, 36), between(0.0012, 0.0028));
    add("check_valve = {}", second_ || happens(0.93));
    if (happens(0.9)) add("discharge_elevation = \"-{:.2f} ft\"", between(1.5, 3));
    if (happens(0.85)) {
      add("leak_detector = {{ kind = \"mechanical\", detects = \"3 gph\", at = \"10 psi\", loss = \"{:.5f} psi/gpm^2\" "
          "}}",
          between(0.0001, 0.0005));
    }
  }

  void line(const std::string& id, const std::string& from, const std::string& to, double length, bool double_wall,
            const std::string& drains_to) {
    add("[[line]]\nid = \"{}\"\nfrom = \"{}\"\nto = \"{}\"\nlength = \"{:.1f} ft\"\nbore = \"{:.2f} in\"\nroughness = "
        "\"0.0015 mm\"\nloss = {:.2f}",
        id, from, to, length, bore_, between(0.5, 4));
    if (walls_) add("wall = \"0.16 in\"\nmodulus = \"1.1 GPa\"");
    if (double_wall) add("double_wall = true");
    if (double_wall && !drains_to.empty() && happens(0.4))
      add("interstice = {{ watch = \"dry\", drains_to = \"{}\" }}", drains_to);
  }

  static std::string place(std::size_t dispenser, const Product& product) {
    return fmt::format("D{}.{}", dispenser + 1, product.id);
  }

  void lines(const Product& product) {
    const std::size_t index = static_cast<std::size_t>(&product - products_.data());
    std::vector<std::size_t> served;
    for (std::size_t d = 0; d < dispensers_; ++d) {
      if (served_[index][d]) served.push_back(d);
    }
    bore_ = far_ ? 1.5 : (happens(0.7) ? 2.0 : 3.0);
    walls_ = happens(0.4);
    const bool double_wall = happens(0.7);
    const double trunk = far_ ? between(150, 320) : between(40, 200);
    std::string from = fmt::format("P{}", index + 1);
    const bool branched = served.size() > 2 && happens(0.4);
    std::size_t split = served.size();
    if (branched) {
      const std::string branch = "B-" + product.id;
      add("[[branch]]\nid = \"{}\"\nelevation = \"-2.5 ft\"", branch);
      line(product.id + "-trunk", from, branch, trunk, double_wall, "");
      from = branch;
      split = served.size() / 2;
      if (index == 0) root_of_regular_ = branch;
    }
    std::string before = from;
    for (std::size_t i = 0; i < served.size(); ++i) {
      if (i == split) before = from;
      const std::string to = place(served[i], product);
      const bool is_trunk = i == 0 && !branched;
      line(is_trunk ? product.id + "-trunk" : fmt::format("{}-{}", product.id, i), before, to,
           is_trunk ? trunk : between(18, 40), double_wall, fmt::format("D{}", served[i] + 1));
      if (is_trunk && index == 0) root_of_regular_ = to;
      before = to;
    }
  }

  void dispenser(std::size_t d) {
    add("[[dispenser]]\nid = \"D{}\"\nelevation = \"6 in\"\nmass = \"480 lb\"", d + 1);
    if (happens(0.85)) {
      const double depth = between(28, 40);
      add("sump = {{ kind = \"tapered\", floor = [\"{:.1f} in\", \"{:.1f} in\"], top = [\"{:.1f} in\", \"{:.1f} in\"], "
          "depth = \"{:.1f} in\", "
          "parts_share = \"{:.0f} %\", sensor_height = \"{:.2f} in\", lowest_seal = \"{:.2f} in\" }}",
          between(12, 16), between(22, 28), between(17, 22), between(30, 42), depth, between(0, 10), between(1, 14),
          between(5, 16));
    }
    for (std::size_t p = 0; p < products_.size(); ++p) {
      if (served_[p][d]) inlet(products_[p]);
    }
    for (std::size_t p = 0; p < products_.size(); ++p) {
      if (!served_[p][d]) continue;
      hose(d, products_[p], 'a');
      if (two_hoses_) hose(d, products_[p], 'b');
    }
  }

  void inlet(const Product& product) {
    add("  [[dispenser.inlet]]\n  product = \"{}\"\n  connection = \"{}\"\n  connection_loss = {{ k = {:.2f} }}",
        product.id, happens(0.5) ? "tee" : "through", between(0.5, 2.2));
    if (heights_) add("  line_elevation = \"-{:.2f} ft\"", between(2.2, 3));
    add("  riser = {{ length = \"{:.2f} ft\", bore = \"1.61 in\", roughness = \"0.045 mm\" }}", between(2.5, 4));
    if (happens(0.9)) {
      add("  shear_valve = {{ poppet = \"{}\", anchored = true, groove_elevation = \"{:.1f} in\", fusible_link = \"165 "
          "degF\", response_index = "
          "{:.0f}, loss = {{ k = 1.1, bore = \"1.61 in\" }}, closing = {{ equivalent_time = \"0.10 s\" }} }}",
          happens(0.6) ? "double" : "single", between(-1, 5), between(60, 200));
    }
    if (happens(0.8))
      add("  liquid_above = \"{:.2f} gal\"\n  drains = \"{:.0f} %\"", between(0.6, 1.8), between(30, 70));
    add("  discharge_loss = 1.0");
    if (happens(0.85)) add("  filter = {{ loss = \"{:.4f} psi/gpm^2\" }}", between(0.008, 0.03));
  }

  void hose(std::size_t d, const Product& product, char letter) {
    add("  [[dispenser.hose]]\n  id = \"D{}.{}-{}\"\n  product = \"{}\"\n  outlet_elevation = \"{:.2f} ft\"", d + 1,
        product.id, letter, product.id, between(2.6, 3.4));
    if (limiter_ && product.gasoline) add("  limiter = \"10 gpm\"");
    if (lumped_) return add("  loss = \"{:.4f} psi/gpm^2\"", between(0.14, 0.22));
    add("  meter = {{ loss = \"{:.4f} psi/gpm^2\" }}\n  control_valve = {{ loss = \"{:.4f} psi/gpm^2\" }}",
        between(0.03, 0.06), between(0.015, 0.03));
    if (happens(0.7))
      add("  whip = {{ length = \"{:.1f} in\", bore = \"0.75 in\", roughness = \"0.0015 mm\" }}", between(18, 36));
    if (happens(0.85)) {
      add("  breakaway = {{ loss = \"{:.4f} psi/gpm^2\" }}", between(0.008, 0.016));
      if (happens(0.6)) {
        add("  parting = {{ pull = \"{:.0f} lbf\", poppet = \"double\", friction = {:.2f} }}", between(120, 300),
            between(0.1, 0.25));
      }
    }
    add("  curb = {{ length = \"{:.1f} ft\", bore = \"0.75 in\", roughness = \"0.0015 mm\" }}", between(7, 13));
    if (happens(0.8)) add("  swivel = {{ loss = \"{:.4f} psi/gpm^2\" }}", between(0.004, 0.009));
    add("  nozzle = {{ loss = \"{:.4f} psi/gpm^2\" }}", between(0.03, 0.06));
  }

  void rest() {
    std::string pumps;
    for (std::size_t i = 0; i < tanks_; ++i) pumps += fmt::format("{}\"P{}\"", i > 0 ? ", " : "", i + 1);
    if (happens(0.8)) add("[[emergency_stop]]\nid = \"E1\"\nstops = [{}]\nacts_in = \"1 s\"", pumps);
    for (std::size_t d = 0; d < dispensers_ && happens(0.8); ++d) {
      const std::string what = happens(0.4) ? pumps : fmt::format("\"P{}\"", count(1, tanks_));
      add("[[interlock]]\nid = \"L{0}\"\nwhen = \"D{0}\"\nthen = \"{1}\"\nwhat = [{2}]", d + 1,
          happens(0.7) ? "stop" : "alarm", what);
    }
    if (happens(0.85)) delivery();
    if (!happens(0.9)) return;
    std::string sold;
    for (const Product& product : products_) {
      sold += fmt::format("{}{{ product = \"{}\", per_month = \"{:.0f} gal\" }}", sold.empty() ? "" : ", ", product.id,
                          between(6000, 120000));
    }
    add("[operations]\nthroughput = [{}]", sold);
    if (happens(0.5)) add("sale = \"{:.1f} gal\"", between(8, 16));
  }

  void delivery() {
    add("[[delivery]]\nid = \"load\"");
    if (happens(0.5)) add("rate = \"{:.0f} gpm\"", between(220, 420));
    add("hose = {{ length = \"{:.1f} ft\", bore = \"4 in\", roughness = \"0.0015 mm\", loss = 6 }}", between(12, 25));
    const std::size_t tank = count(0, tanks_ - 1);
    add("  [[delivery.compartment]]\n  product = \"{}\"\n  tank = \"T{}\"\n  volume = \"{:.0f} gal\"\n  elevation = "
        "\"6 ft\"\n  height = \"5 ft\"",
        product_of(tank).id, tank + 1, between(1200, 4500));
    if (happens(0.8)) add("  temperature = \"{:.1f} degF\"", between(66, 92));
  }

  std::mt19937_64 draws_;
  std::uint64_t seed_;
  std::string out_;
  std::size_t tanks_ = 1;
  std::size_t dispensers_ = 1;
  bool second_ = false;  ///< a second tank and pump of regular, on the same line
  bool two_hoses_ = true;
  bool lumped_ = false;
  bool limiter_ = false;
  bool heights_ = true;
  bool far_ = false;
  bool walls_ = false;
  double bore_ = 2.0;  // [in]
  std::string root_of_regular_;
  std::vector<Product> products_;
  std::vector<std::vector<bool>> served_;
};

}  // namespace

std::string random_station(std::uint64_t seed) { return Writer(seed).text(); }

}  // namespace forecourse::test
