#pragma once

#include "forecourse/store/records/cell.h"
#include "forecourse/store/records/columns.h"
#include "forecourse/store/records/row.h"

namespace forecourse::store {

/// Visitor of the descriptions that fills a record with the values of a row, in the order of the columns.
class RecordFiller {
 public:
  explicit RecordFiller(const Row& row) : row_(row) {}

  void kind(std::string_view, std::string_view, std::string_view) {}
  void one_of(std::initializer_list<std::string_view>) {}
  void moment(std::string_view, records::Moment& member, Need) {
    const Value& day = next();
    if (const auto read = stored_day(day.text)) {
      member.day = *read;
      member.day.where = day.where;
    }
    const Value& time = next();
    if (time.given()) member.time = Duration::from_si(time.number);
  }
  void name(std::string_view, site::Name& member, std::string_view, const About&) {
    const Value& value = next();
    member = {value.text, value.where};
  }
  template <std::size_t N>
  void word(std::string_view, site::Name& member, const std::array<std::string_view, N>&, std::string_view,
            const About&) {
    const Value& value = next();
    member = {value.text, value.where};
  }
  template <class E, std::size_t N>
  void choice(std::string_view, E& member, const std::array<site::WordFor<E>, N>& words, std::string_view,
              const About&) {
    member = words[static_cast<std::size_t>(next().number)].value;
  }
  void fact(std::string_view, site::Fact& member, std::string_view) {
    const Value& value = next();
    if (value.given()) member = value.number > 0.0;
  }
  template <class K>
  void quantity(std::string_view, std::optional<Quantity<K>>& member, std::string_view, const Range&,
                std::string_view) {
    const Value& value = next();
    if (value.given()) member = Quantity<K>::from_si(value.number);
  }

 private:
  const Value& next() { return row_.values[at_++]; }

  const Row& row_;
  std::size_t at_ = 0;
};

/// The record of one row of its file.
template <class Record>
[[nodiscard]] Record record_of(const Row& row) {
  Record record;
  RecordFiller filler(row);
  columns(filler, record);
  return record;
}

// How rows become records. Most records are one row; rows of one walk-through, or one incident, that follow each other
// are put together.

template <class Record>
void put(std::vector<Record>& all, Record record) {
  all.push_back(std::move(record));
}
void put(std::vector<records::Inspection>& all, InspectionRow row);
void put(std::vector<records::Incident>& all, IncidentRow row);

/// True when the moment of `a` comes before that of `b`; a day alone comes before all times of it.
[[nodiscard]] bool is_before(const records::Moment& a, const records::Moment& b);

}  // namespace forecourse::store
