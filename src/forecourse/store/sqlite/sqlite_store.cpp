#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <filesystem>
#include <map>

#include "forecourse/store/records/seen_rows.h"
#include "forecourse/store/sqlite/migrations.h"
#include "forecourse/store/sqlite/statements.h"
#include "forecourse/store/store.h"

namespace forecourse::store {
namespace {

constexpr int application_id = 0x666F7263;  // "forc", in the header of the file
constexpr int wait_for_others_ms = 5000;

/// Calls what may fail in the database, and tells the failure as our own.
template <class Call>
auto in_database(Call&& call) {
  try {
    return call();
  } catch (const SQLite::Exception& failure) {
    throw StoreFailure(failure.what());
  }
}

int pragma(SQLite::Database& database, const char* name) {
  return database.execAndGet(fmt::format("PRAGMA {}", name)).getInt();
}

/// Reads the values of a row from a statement, from column `at` on.
void read_row(SQLite::Statement& statement, int at, const Kind& kind, Row& row) {
  row.values.resize(kind.columns.size());
  for (std::size_t i = 0; i < row.values.size(); ++i) {
    row.values[i] = {statement.getColumn(at++).getString(), 0.0, {}};
    if (kind.columns[i].type != ColumnType::quantity) continue;
    row.values[i].number = statement.getColumn(at++).getDouble();
  }
}

class SqliteWriting : public Writing {
 public:
  SqliteWriting(SQLite::Database& database, const RowSource& source)
      : database_(database), transaction_(database, SQLite::TransactionBehavior::IMMEDIATE) {
    SQLite::Statement insert(database, "INSERT INTO imports (source, at) VALUES (?, ?)");
    insert.bind(1, source.name);
    insert.bind(2, source.at);
    insert.exec();
    import_ = database.getLastInsertRowid();
  }

  Added add(const Kind& kind, const Row& row, std::size_t line, StoredRow& there) override {
    return in_database([&] {
      SQLite::Statement& insert = prepared(inserts_, kind, insert_statement);
      insert.bind(1, import_);
      insert.bind(2, static_cast<std::int64_t>(line));
      int at = 3;
      for (std::size_t i = 0; i < row.values.size(); ++i) {
        const Value& value = row.values[i];
        insert.bindNoCopy(at++, value.text);
        if (kind.columns[i].type != ColumnType::quantity) continue;
        if (value.given()) {
          insert.bind(at++, value.number);
        } else {
          insert.bind(at++);
        }
      }
      const bool added = insert.exec() > 0;
      insert.reset();
      any_ = any_ || added;
      return added ? Added::added : compare(kind, row, there);
    });
  }

  void commit() override {
    in_database([&] {
      if (!any_) database_.exec("DELETE FROM imports WHERE id = " + std::to_string(import_));
      transaction_.commit();
    });
  }

 private:
  using Prepared = std::map<const Kind*, SQLite::Statement>;

  SQLite::Statement& prepared(Prepared& statements, const Kind& kind, std::string (*sql)(const Kind&)) {
    auto found = statements.find(&kind);
    if (found == statements.end()) {
      found = statements.emplace(&kind, SQLite::Statement(database_, sql(kind))).first;
    }
    return found->second;
  }

  Added compare(const Kind& kind, const Row& row, StoredRow& there) {
    SQLite::Statement& select = prepared(selects_, kind, by_key_statement);
    int at = 1;
    for (std::size_t i = 0; i < row.values.size(); ++i) {
      if (kind.columns[i].key) select.bindNoCopy(at++, row.values[i].text);
    }
    if (!select.executeStep()) throw StoreFailure("a row that is there cannot be found by its key");
    there.source = select.getColumn(0).getString();
    there.line = static_cast<std::size_t>(select.getColumn(1).getInt64());
    read_row(select, 2, kind, there.row);
    select.reset();
    return same_values(kind, row, there.row) ? Added::there : Added::contradicts;
  }

  SQLite::Database& database_;
  SQLite::Transaction transaction_;
  std::int64_t import_ = 0;
  bool any_ = false;
  Prepared inserts_;
  Prepared selects_;
};

class SqliteStore : public Store {
 public:
  SqliteStore(const std::string& path, int flags) : database_(path, flags, wait_for_others_ms) {}

  /// Why this file cannot be used; brings it to the present version otherwise.
  std::string prepare() {
    const bool empty = database_.execAndGet("SELECT count(*) FROM sqlite_master").getInt() == 0;
    if (!empty && pragma(database_, "application_id") != application_id) return "it is a database of another program";
    const auto present = static_cast<int>(migrations().size());
    if (pragma(database_, "user_version") > present) {
      return fmt::format("it was written by a later version of forecourse (store version {}, this one knows {})",
                         pragma(database_, "user_version"), present);
    }
    database_.exec("PRAGMA journal_mode = WAL");
    database_.exec("PRAGMA synchronous = FULL");  // what was committed stays after a power cut too
    database_.exec("PRAGMA foreign_keys = ON");
    SQLite::Transaction transaction(database_, SQLite::TransactionBehavior::IMMEDIATE);
    for (int version = pragma(database_, "user_version"); version < present; ++version) {
      database_.exec(migrations()[static_cast<std::size_t>(version)]);
      database_.exec(fmt::format("PRAGMA user_version = {}", version + 1));
    }
    if (empty) database_.exec(fmt::format("PRAGMA application_id = {}", application_id));
    transaction.commit();
    return {};
  }

  std::unique_ptr<Writing> write(const RowSource& source) override {
    return in_database([&] { return std::make_unique<SqliteWriting>(database_, source); });
  }

  std::vector<std::string> take_back(const std::string& source) override {
    return in_database([&] {
      std::vector<std::string> out;
      SQLite::Transaction transaction(database_, SQLite::TransactionBehavior::IMMEDIATE);
      SQLite::Statement last(database_, "SELECT max(id) FROM imports WHERE source = ?");
      last.bind(1, source);
      if (!last.executeStep() || last.getColumn(0).isNull()) return out;
      const std::int64_t import = last.getColumn(0).getInt64();
      last.reset();
      for (const Kind& kind : kinds()) {
        SQLite::Statement rows(database_, fmt::format("DELETE FROM {} WHERE import = ? RETURNING day", kind.name));
        rows.bind(1, import);
        while (rows.executeStep()) out.push_back(fmt::format("{} of {}", kind.noun, rows.getColumn(0).getString()));
      }
      database_.exec(fmt::format("DELETE FROM imports WHERE id = {}", import));
      transaction.commit();
      return out;
    });
  }

  void each_row(const Kind& kind, const std::function<void(const Row&)>& visit) override {
    in_database([&] {
      SQLite::Statement all(database_, all_statement(kind));
      Row row;
      while (all.executeStep()) {
        read_row(all, 0, kind, row);
        visit(row);
      }
    });
  }

  std::vector<KindSummary> summary() override {
    return in_database([&] {
      std::vector<KindSummary> out;
      for (const Kind& kind : kinds()) {
        SQLite::Statement count(database_, fmt::format("SELECT count(*), min(day), max(day) FROM {}", kind.name));
        count.executeStep();
        out.push_back({&kind, static_cast<std::size_t>(count.getColumn(0).getInt64()), count.getColumn(1).getString(),
                       count.getColumn(2).getString()});
      }
      return out;
    });
  }

  std::optional<std::string> result(const std::string& key) override {
    return in_database([&]() -> std::optional<std::string> {
      SQLite::Statement select(database_, "SELECT result FROM results WHERE key = ?");
      select.bind(1, key);
      if (!select.executeStep()) return std::nullopt;
      return select.getColumn(0).getString();
    });
  }

  void keep_result(const std::string& key, std::string_view study, const std::string& result) override {
    in_database([&] {
      SQLite::Statement insert(database_, "INSERT OR REPLACE INTO results (key, study, result) VALUES (?, ?, ?)");
      insert.bind(1, key);
      insert.bind(2, std::string(study));
      insert.bind(3, result);
      insert.exec();
    });
  }

  void drop_results(std::string_view study) override {
    in_database([&] {
      SQLite::Statement drop(database_, "DELETE FROM results WHERE ?1 = '' OR study = ?1");
      drop.bind(1, std::string(study));
      drop.exec();
    });
  }

  void back_up(const std::string& path) override {
    std::error_code trouble;
    if (std::filesystem::exists(path, trouble)) throw StoreFailure(path + " is there already: name a new file");
    const std::string half = path + ".new";
    std::filesystem::remove(half, trouble);
    in_database([&] {
      SQLite::Statement copy(database_, "VACUUM INTO ?");
      copy.bind(1, half);
      copy.exec();
      SQLite::Database made(half, SQLite::OPEN_READONLY);
      const std::vector<std::string> wrong = faults_of(made);
      if (!wrong.empty()) throw StoreFailure("the copy is not sound: " + wrong.front());
    });
    std::filesystem::rename(half, path, trouble);
    if (trouble) throw StoreFailure(path + " cannot be written: " + trouble.message());
  }

  std::vector<std::string> faults() override {
    return in_database([&] { return faults_of(database_); });
  }

 private:
  static std::vector<std::string> faults_of(SQLite::Database& database) {
    std::vector<std::string> out;
    SQLite::Statement integrity(database, "PRAGMA integrity_check");
    while (integrity.executeStep()) {
      if (const std::string line = integrity.getColumn(0).getString(); line != "ok") out.push_back(line);
    }
    SQLite::Statement keys(database, "PRAGMA foreign_key_check");
    while (keys.executeStep()) out.push_back("a row of " + keys.getColumn(0).getString() + " names no import");
    return out;
  }

  SQLite::Database database_;
};

}  // namespace

// The database itself is asked, and not the bytes of the file: a process that closes a file which it has open as a
// database as well gives up the locks of that database.
bool is_store_file(const std::string& path) {
  std::error_code trouble;
  if (!std::filesystem::is_regular_file(path, trouble) || std::filesystem::file_size(path, trouble) == 0) return false;
  try {
    SQLite::Database database(path, SQLite::OPEN_READWRITE, wait_for_others_ms);
    pragma(database, "schema_version");
    return true;
  } catch (const SQLite::Exception& failure) {
    return failure.getErrorCode() != SQLITE_NOTADB;
  }
}

Parsed<std::unique_ptr<Store>> open_store(const std::string& path, Opening opening) {
  Parsed<std::unique_ptr<Store>> result;
  const auto fault = [&](const std::string& why, std::string hint) {
    result.value.reset();
    result.diagnostics.push_back(
        {Severity::error, fmt::format("{} cannot be opened as a store: {}", path, why), {}, std::move(hint), {}});
  };
  std::error_code trouble;
  const bool exists = std::filesystem::exists(path, trouble);
  if (!exists && opening == Opening::must_exist) {
    fault("it is not there", "forecourse records import makes one");
    return result;
  }
  try {
    const int create = opening == Opening::may_create ? SQLite::OPEN_CREATE : 0;
    auto store = std::make_unique<SqliteStore>(path, SQLite::OPEN_READWRITE | create);
    const std::string why = store->prepare();
    if (!why.empty()) {
      fault(why, "");
      return result;
    }
    result.value = std::move(store);
  } catch (const SQLite::Exception& failure) {
    const bool no_database = failure.getErrorCode() == SQLITE_NOTADB;
    fault(no_database ? "it is no store" : failure.what(),
          no_database ? "a store is one file, made by forecourse records import" : "");
  }
  return result;
}

}  // namespace forecourse::store
