#include "forecourse/server/desk/desk.h"

#include <algorithm>
#include <filesystem>
#include <system_error>

#include "forecourse/server/desk/merge.h"
#include "forecourse/server/desk/site_name.h"
#include "forecourse/server/desk/templates.h"

namespace forecourse::server {
namespace {

namespace fs = std::filesystem;

constexpr int most_tries = 5;  // against a file that keeps changing
constexpr unsigned new_file_mode = 0644;

std::string label_of(const Step* step) { return step == nullptr ? std::string() : step->label; }

/// The file itself behind a path, links followed; empty where there is none.
fs::path behind(const fs::path& path) {
  std::error_code trouble;
  fs::path file = fs::canonical(path, trouble);
  return trouble ? fs::path() : file;
}

}  // namespace

std::string Desk::open_path(const std::string& path) {
  const std::lock_guard lock(mutex_);
  const fs::path file = behind(path);
  if (file.empty()) return "no such file, or no permission";
  std::string why;
  std::unique_ptr<OpenSite> site = OpenSite::open(file.string(), 1, Begins::with_journal, why);
  if (!site) return why;
  const fs::path folder = fs::path(path).parent_path();
  folder_ = behind(folder.empty() ? "." : folder).string();
  file_ = fs::path(path).filename().string();
  site_ = std::move(site);
  return {};
}

StationFacts Desk::facts_now() const {
  const KeptText& kept = site_->kept();
  return {kept.text,
          kept.revision,
          file_,
          site_->read_only().empty(),
          label_of(undoable(kept)),
          label_of(redoable(kept)),
          (fs::path(folder_) / file_).string()};
}

StationFacts Desk::facts() const {
  const std::lock_guard lock(mutex_);
  return facts_now();
}

std::vector<std::string> Desk::names() const {
  const std::lock_guard lock(mutex_);
  return site_names(folder_);
}

Outcome Desk::granted() const { return refuse(Refusal::none, {}, {}); }

Outcome Desk::refuse(Refusal refusal, const std::string& error, const std::string& hint) const {
  return {refusal, error, hint, {}, {}, facts_now()};
}

Outcome Desk::stale(const std::string& then) const {
  Outcome outcome = refuse(Refusal::stale, "the site file has changed since", "look at it and do it again");
  outcome.changed = changed_paths(then, site_->kept().text);
  return outcome;
}

Outcome Desk::stale_at(int revision) const {
  const std::optional<std::string> then = site_->text_at(revision);
  return stale(then.value_or(site_->kept().text));
}

void Desk::tell(const char* why) const {
  if (told_) told_(site_->kept().revision, why);
}

Outcome Desk::make_move(const Plan& plan) {
  const std::lock_guard lock(mutex_);
  for (int attempt = 0; attempt < most_tries; ++attempt) {
    std::string why;
    if (site_->look(why)) tell("outside");
    if (!why.empty()) return refuse(Refusal::failed, "the file cannot be read: " + why, "is it still a site file?");
    if (!site_->read_only().empty())
      return refuse(Refusal::read_only, site_->read_only(), "save it under another name");
    Move move;
    Outcome planned = plan(move);
    const Change& change = move.step.change;
    const bool nothing = move.kind == Move::Kind::step && change.in == change.out;
    if (planned.refusal != Refusal::none || nothing) return planned;
    const SaveResult result = site_->write(move);
    if (result.saved == Saved::failed) {
      return refuse(Refusal::failed, "the file could not be saved: " + result.why, "nothing was changed");
    }
    if (result.saved == Saved::changed_outside) continue;
    tell("edit");
    planned.facts = facts_now();
    return planned;
  }
  return refuse(Refusal::failed, "the file is being changed by others all the time", "try again");
}

Outcome Desk::plan_edit(int revision, const std::string& label, const std::vector<Edit>& edits, Move& move) const {
  const std::string& now = site_->kept().text;
  const std::optional<std::string> then = site_->text_at(revision);
  if (!then) return stale(now);
  if (*then != now && !meet(*then, now, edits).apart) return stale(*then);
  Parsed<std::string> applied = apply(now, edits);
  if (applied.ok() && applied.value.size() > largest_site) {
    return refuse(Refusal::refused, "the site file would become too large", "4 MiB is the most");
  }
  Outcome outcome = granted();
  if (!applied.ok()) {
    const Diagnostic& first = *std::find_if(applied.diagnostics.begin(), applied.diagnostics.end(),
                                            [](const Diagnostic& d) { return d.severity == Severity::error; });
    outcome = refuse(Refusal::refused, first.message, first.hint);
    outcome.diagnostics = std::move(applied.diagnostics);
  }
  move = {Move::Kind::step, {label, change_between(now, applied.value)}};
  return outcome;
}

Outcome Desk::edit(int revision, const std::string& label, const std::vector<Edit>& edits) {
  return make_move([&](Move& move) { return plan_edit(revision, label, edits, move); });
}

Outcome Desk::replace(int revision, const std::string& label, const std::string& text) {
  return make_move([&](Move& move) {
    const KeptText& kept = site_->kept();
    if (revision != kept.revision) return stale_at(revision);
    move = {Move::Kind::step, {label, change_between(kept.text, text)}};
    return granted();
  });
}

Outcome Desk::undo(int revision) {
  return make_move([&](Move& move) {
    if (revision != site_->kept().revision) return stale_at(revision);
    if (undoable(site_->kept()) == nullptr) return refuse(Refusal::stale, "there is nothing to undo", {});
    move.kind = Move::Kind::undo;
    return granted();
  });
}

Outcome Desk::redo(int revision) {
  return make_move([&](Move& move) {
    if (revision != site_->kept().revision) return stale_at(revision);
    if (redoable(site_->kept()) == nullptr) return refuse(Refusal::stale, "there is nothing to redo", {});
    move.kind = Move::Kind::redo;
    return granted();
  });
}

Outcome Desk::switch_to(const std::string& path, Begins begins) {
  const fs::path file = behind(path);
  if (file.empty()) return refuse(Refusal::not_there, "there is no such site file in the folder", {});
  if (file.parent_path() != folder_) return refuse(Refusal::refused, "the file lies in another folder", {});
  if (file == site_->path()) return granted();
  std::string why;
  std::unique_ptr<OpenSite> site = OpenSite::open(file.string(), site_->kept().revision + 1, begins, why);
  if (!site) return refuse(Refusal::failed, "the file cannot be opened: " + why, {});
  site_ = std::move(site);
  file_ = fs::path(path).filename().string();
  tell("opened");
  return granted();
}

Outcome Desk::open(const std::string& name) {
  const std::lock_guard lock(mutex_);
  const std::string wrong = wrong_name(name);
  if (!wrong.empty()) return refuse(Refusal::refused, wrong, "name a file of this folder");
  return switch_to((fs::path(folder_) / name).string(), Begins::with_journal);
}

Outcome Desk::write_new(const std::string& name, const std::string& text) {
  const std::string wrong = wrong_name(name);
  if (!wrong.empty()) return refuse(Refusal::refused, wrong, "a name is like my-station.toml");
  const std::string path = (fs::path(folder_) / name).string();
  std::error_code unknown;
  if (fs::symlink_status(path, unknown).type() != fs::file_type::not_found) {
    return refuse(Refusal::there, "there is a file of this name already", "choose another name");
  }
  const std::string why = create_file(path, text, new_file_mode);
  if (!why.empty()) return refuse(Refusal::failed, "the file could not be written: " + why, "nothing was changed");
  settle_folder(path);
  return switch_to(path, Begins::afresh);
}

Outcome Desk::save_as(const std::string& name) {
  const std::lock_guard lock(mutex_);
  return write_new(name, site_->kept().text);
}

Outcome Desk::create(const std::string& name, const std::string& template_id) {
  const std::lock_guard lock(mutex_);
  const std::vector<Template> templates = site_templates();
  const auto found =
      std::find_if(templates.begin(), templates.end(), [&](const Template& each) { return each.id == template_id; });
  if (found == templates.end()) {
    std::string ids;
    for (const Template& each : templates) ids += (ids.empty() ? "" : ", ") + each.id;
    return refuse(Refusal::refused, "there is no template '" + template_id + "'", "there are: " + ids);
  }
  return write_new(name, found->text);
}

void Desk::look() {
  const std::lock_guard lock(mutex_);
  if (site_->look_when_calm()) tell("outside");
}

}  // namespace forecourse::server
