#include "forecourse/handover/sheets/readings.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "forecourse/base/decimal.h"
#include "forecourse/base/nearest_word.h"
#include "forecourse/base/unit_text.h"
#include "forecourse/checks/rules/period.h"

namespace forecourse::handover {
namespace {

using site::records::SheetReading;

constexpr double rounding = 1e-9;  // share of a limit by which a reading in other units may pass it

bool is_yes_no(const std::string& unit) { return unit == "yes/no" || unit.empty(); }

/// A bare number, however it is written out; empty: it is none, or not finite.
std::optional<double> bare_number(const std::string& text) {
  const std::optional<double> read = read_decimal(text);
  return read && std::isfinite(*read) ? read : std::nullopt;
}

/// Whether a reading below zero says something: a place below another, an error, a temperature.
bool may_be_negative(const SheetRow& row) {
  return row.amount == Amount::draw || row.amount == Amount::temperature || row.amount == Amount::height ||
         row.id == "shear-groove";
}

/// Whether a text ends like a number, so that a unit is to stand behind it.
bool is_bare(const std::string& text) {
  return !text.empty() && text.find_first_not_of("0123456789.,-+/ eE") == std::string::npos;
}

class Holder {
 public:
  Holder(const SheetPack& pack, const site::Date& today) : pack_(pack), today_(today) {}

  Parsed<ReadingsTold> hold(const std::vector<SheetReading>& typed) {
    out_.value.readings.reserve(typed.size());
    for (const SheetReading& one : typed) take(one);
    for (const ReadingTold& one : out_.value.readings) {
      int& count = one.verdict == Verdict::within    ? out_.value.within
                   : one.verdict == Verdict::outside ? out_.value.outside
                                                     : out_.value.not_determined;
      ++count;
    }
    return std::move(out_);
  }

 private:
  void error(SourceSpan where, std::string message, std::string hint, std::vector<Diagnostic> related = {}) {
    out_.diagnostics.push_back({Severity::error, std::move(message), where, std::move(hint), std::move(related)});
  }

  void take(const SheetReading& typed) {
    if (checks::is_before(today_, typed.at.day)) {
      error(typed.at.day.where, "the reading is of " + checks::text(typed.at.day) + ", which is yet to come",
            "today is " + checks::text(today_) + "; give --on where the readings are of another time");
      return;
    }
    const auto kind = sheet_kind(typed.sheet.text);
    const Sheet* sheet = kind ? sheet_of(*kind) : nullptr;
    if (sheet == nullptr) {
      error(typed.sheet.where, "there is no sheet '" + typed.sheet.text + "'", sheet_hint(typed.sheet.text));
      return;
    }
    ReadingTold told;
    told.typed = typed;
    told.sheet = *kind;
    if (!find_row(*sheet, typed, told) || !read_value(told) || is_double(told)) return;
    judge(told);
    out_.value.readings.push_back(std::move(told));
  }

  [[nodiscard]] const Sheet* sheet_of(SheetKind kind) const {
    const auto found =
        std::find_if(pack_.sheets.begin(), pack_.sheets.end(), [&](const Sheet& one) { return one.kind == kind; });
    return found == pack_.sheets.end() ? nullptr : &*found;
  }

  static std::string sheet_hint(const std::string& written) {
    const std::vector<std::string> known = sheet_kind_words();
    const auto near = nearest_word(written, std::span<const std::string>(known));
    std::string all;
    for (const std::string& one : known) all += (all.empty() ? "" : ", ") + one;
    return near ? "did you mean '" + std::string(*near) + "'?" : "one of " + all;
  }

  bool find_row(const Sheet& sheet, const SheetReading& typed, ReadingTold& told) {
    std::vector<std::string> known;
    for (const SheetSection& section : sheet.sections) {
      if (section.id != typed.section.text) continue;
      for (const SheetRow& row : section.rows) {
        if (row.blank == Blank::none || row.part != typed.part.text) continue;
        if (row.what == typed.what.text || row.id == typed.what.text) {
          told.section = section.id;
          told.row = row;
          return true;
        }
        known.push_back(row.what);
      }
    }
    const auto near = nearest_word(typed.what.text, std::span<const std::string>(known));
    std::string hint =
        near ? "did you mean '" + std::string(*near) + "'?"
             : "take the lines of the file that --out writes; sheet, section, part and what stay as they are";
    error(typed.what.where,
          "sheet '" + typed.sheet.text + "' has no line '" + typed.what.text + "' of part '" + typed.part.text +
              "' in section '" + typed.section.text + "'",
          std::move(hint));
    return false;
  }

  bool read_value(ReadingTold& told) {
    const std::string& text = told.typed.value.text;
    switch (told.row.blank) {
      case Blank::yes_no:
        return read_answer(told);
      case Blank::amount:
        return read_amount(told) && is_possible(told);
      default:
        told.value = text;
        return true;
    }
  }

  bool read_answer(ReadingTold& told) {
    const std::string& text = told.typed.value.text;
    if ((text != "yes" && text != "no") || !is_yes_no(told.typed.unit.text)) {
      error(told.typed.value.where, "'" + text + "' is neither yes nor no", "write yes or no");
      return false;
    }
    told.answer = text == "yes";
    told.value = text;
    return true;
  }

  bool read_amount(ReadingTold& told) {
    const std::string& text = told.typed.value.text;
    const std::string& unit = told.typed.unit.text;
    told.value = is_bare(text) && !unit.empty() ? text + " " + unit : text;
    const QuantityKind* kind = quantity_of(told.row.amount);
    if (kind == nullptr) return read_number(told, text, unit);
    const auto read = read_quantity(told.value, *kind);
    if (const auto* fault = std::get_if<UnitTextError>(&read)) {
      error(told.typed.value.where, "'" + told.value + "' " + fault->message,
            fault->hint.empty() ? std::string("write ") + kind->examples : fault->hint);
      return false;
    }
    told.amount = std::get<double>(read);
    return true;
  }

  bool is_possible(const ReadingTold& told) {
    if (!std::isfinite(*told.amount)) {
      error(told.typed.value.where, "'" + told.value + "' is no number", "write the number that was read");
      return false;
    }
    if (*told.amount >= 0.0 || may_be_negative(told.row)) return true;
    error(told.typed.value.where, "'" + told.value + "' is below zero", "write it without a sign, as it was read");
    return false;
  }

  /// Of an amount without a kind of quantity: ohm, or a count.
  bool read_number(ReadingTold& told, const std::string& text, const std::string& unit) {
    const std::string own = unit_of(told.row.amount);
    std::string number = text;
    if (!own.empty() && number.size() > own.size() && number.ends_with(own)) {
      number.resize(number.size() - own.size());
      while (!number.empty() && number.back() == ' ') number.pop_back();
    }
    told.amount = bare_number(number);
    if (told.amount && (unit.empty() || unit == own)) return true;
    error(told.typed.value.where, "'" + told.value + "' is no number" + (own.empty() ? "" : " of " + own),
          own.empty() ? "write 3" : "write \"0.4 " + own + "\"");
    return false;
  }

  /// A line that was there before: with the same value it counts once, with another it is an error.
  bool is_double(const ReadingTold& told) {
    const SheetReading& t = told.typed;
    const double time = t.at.time ? t.at.time->si() : -1.0;
    const auto key =
        std::tuple(t.sheet.text, told.section, told.row.part, told.row.what, checks::text(t.at.day), time, t.by.text);
    const auto [at, is_new] = seen_.emplace(key, out_.value.readings.size());
    if (is_new) return false;
    const ReadingTold& first = out_.value.readings[at->second];
    const Diagnostic there{Severity::note, "first here", first.typed.where, {}, {}};
    const bool same = first.value == told.value || (told.amount && first.amount && *told.amount == *first.amount);
    if (same) {
      out_.diagnostics.push_back(
          {Severity::warning, "this reading stands twice, with the same value: it counts once", t.where, {}, {there}});
    } else {
      error(t.where,
            "this reading contradicts another of the same day: '" + told.value + "' against '" + first.value + "'",
            "delete the wrong one; if both are right, enter their times", {there});
    }
    return true;
  }

  static bool past(const RowLimit& limit, double value) {
    const auto beyond = [&](double by, double bound) {
      const double slack = rounding * std::abs(bound);
      return limit.strict ? by >= -slack : by > slack;
    };
    if (limit.at_least && beyond(*limit.at_least - value, *limit.at_least)) return true;
    return limit.at_most && beyond(value - *limit.at_most, *limit.at_most);
  }

  static void judge(ReadingTold& told) {
    if (told.row.blank == Blank::yes_no) return judge_answer(told);
    if (!told.amount) {
      told.reason = "words are kept as they are";
      return;
    }
    const SheetRow& row = told.row;
    if (row.value) told.difference = *told.amount - *row.value;
    if (past(row.limit, *told.amount)) return conclude(told, Verdict::outside, "past its limit");
    const bool limited = row.limit.at_least || row.limit.at_most;
    const std::string so_far = limited ? "within its limit; " : "";
    if (row.value && !row.rests_on.empty()) {
      told.reason = so_far + "the computed value rests on " + row.rests_on;
      return;
    }
    if (row.tolerance.known()) {
      const double slack = rounding * std::abs(*told.amount);
      const bool in = *told.amount >= *row.tolerance.low - slack && *told.amount <= *row.tolerance.high + slack;
      return conclude(told, in ? Verdict::within : Verdict::outside,
                      in ? "within its tolerance" : "outside its tolerance");
    }
    if (limited && !row.tolerance.open()) return conclude(told, Verdict::within, "within its limit");
    told.reason = so_far + (row.value             ? "no tolerance is agreed"
                            : row.missing.empty() ? "nothing to hold it against"
                                                  : row.missing);
  }

  static void judge_answer(ReadingTold& told) {
    if (!told.row.expected) {
      told.reason = told.row.missing.empty() ? "nothing to hold it against" : told.row.missing;
      return;
    }
    const bool as_expected = *told.answer == *told.row.expected;
    conclude(told, as_expected ? Verdict::within : Verdict::outside,
             as_expected          ? "as it should be"
             : *told.row.expected ? "it should be yes"
                                  : "it should be no");
  }

  static void conclude(ReadingTold& told, Verdict verdict, std::string reason) {
    told.verdict = verdict;
    told.reason = std::move(reason);
  }

  const SheetPack& pack_;
  const site::Date& today_;
  Parsed<ReadingsTold> out_;
  std::map<std::tuple<std::string, std::string, std::string, std::string, std::string, double, std::string>,
           std::size_t>
      seen_;
};

}  // namespace

const char* word(Verdict verdict) {
  constexpr std::array<const char*, 3> words{"within", "outside", "not determined"};
  return words[static_cast<std::size_t>(verdict)];
}

Parsed<ReadingsTold> hold_readings(const SheetPack& pack, const std::vector<SheetReading>& typed,
                                   const site::Date& today) {
  return Holder(pack, today).hold(typed);
}

std::vector<Diagnostic> without_a_name(const ReadingsTold& told) {
  std::vector<Diagnostic> out;
  for (const ReadingTold& one : told.readings) {
    if (one.row.who.empty() || !one.typed.by.empty()) continue;
    out.push_back(
        {Severity::error,
         "who did it is missing: '" + one.row.what + "' of part '" + one.row.part + "' is done by " + one.row.who,
         one.typed.by.where,
         "write a name in the column by",
         {}});
  }
  return out;
}

}  // namespace forecourse::handover
