#include "forecourse/server/desk/open_site.h"

#include <unistd.h>

#include <algorithm>
#include <filesystem>

namespace forecourse::server {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
const char* const outside = "changed outside";

/// The mark that the file begins with, taken off the text.
std::string take_mark(std::string& text) {
  if (!text.starts_with(byte_order_mark)) return {};
  text.erase(0, byte_order_mark.size());
  return std::string(byte_order_mark);
}

std::string why_not_writable(const std::string& path) {
  const std::string folder = std::filesystem::path(path).parent_path().string();
  if (access(path.c_str(), W_OK) != 0) return "the file is read-only";
  return access(folder.c_str(), W_OK) != 0 ? "the folder of the file is read-only" : "";
}

}  // namespace

std::unique_ptr<OpenSite> OpenSite::open(const std::string& path, int revision, Begins begins, std::string& why) {
  std::unique_ptr<OpenSite> site(new OpenSite(path));
  why = site->take_file();
  if (!why.empty()) return nullptr;
  site->take_journal(revision, begins);
  return site;
}

std::string OpenSite::take_file() {
  seal_ = seen_ = seal_of(path_);
  std::string why = read_whole(path_, largest_site, kept_.text);
  mark_ = take_mark(kept_.text);
  return why;
}

void OpenSite::take_journal(int revision, Begins begins) {
  read_only_ = why_not_writable(path_);
  if (read_only_.empty()) read_only_ = journal_.open();
  const bool reads = read_only_.empty() && begins == Begins::with_journal;
  std::optional<KeptText> journaled = reads ? journal_.read() : std::nullopt;
  std::string now = kept_.text;
  if (journaled) kept_ = std::move(*journaled);
  kept_.revision = std::max(kept_.revision, revision);
  if (now != kept_.text) make(kept_, {Move::Kind::step, {outside, change_between(kept_.text, now)}});
  if (read_only_.empty()) read_only_ = journal_.rewrite(kept_);
}

void OpenSite::moved(const std::string& before) {
  changes_.emplace_back(kept_.revision, change_between(before, kept_.text));
  if (changes_.size() > most_steps) changes_.pop_front();
}

void OpenSite::adopt(std::string text) {
  mark_ = take_mark(text);
  if (text == kept_.text) return;
  const std::string before = kept_.text;
  const Move move{Move::Kind::step, {outside, change_between(before, text)}};
  make(kept_, move);
  moved(before);
  if (read_only_.empty()) static_cast<void>(journal_.add(move, kept_));  // if not now, with the next move
}

bool OpenSite::look(std::string& why) {
  const Seal seal = seal_of(path_);
  if (seal.size < 0) return false;  // gone: the next save makes it anew
  std::string text;
  why = read_whole(path_, largest_site, text);
  if (!why.empty()) return false;
  seal_ = seal;
  const int before = kept_.revision;
  adopt(std::move(text));
  return kept_.revision != before;
}

bool OpenSite::look_when_calm() {
  const Seal seal = seal_of(path_);
  const bool calm = seal == std::exchange(seen_, seal);
  std::string why;
  return calm && seal != seal_ && look(why);
}

std::optional<std::string> OpenSite::text_at(int revision) const {
  std::optional<std::string> text = kept_.text;
  int reached = kept_.revision;
  for (auto change = changes_.rbegin(); reached > revision && change != changes_.rend() && text; ++change) {
    text = backward(change->second, *text);
    reached = change->first - 1;
  }
  return reached == revision ? text : std::nullopt;
}

SaveResult OpenSite::write(const Move& move) {
  const KeptText before = kept_;
  if (!make(kept_, move)) return {Saved::failed, "there is no such step"};
  SaveResult result = save_over(path_, mark_ + before.text, mark_ + kept_.text);
  if (result.saved == Saved::done) {
    result.why = journal_.add(move, kept_);
    if (!result.why.empty()) {  // what cannot be undone is not done
      static_cast<void>(save_over(path_, mark_ + kept_.text, mark_ + before.text));
      result.saved = Saved::failed;
    }
  }
  if (result.saved == Saved::done) {
    moved(before.text);
  } else {
    kept_ = before;
  }
  return result;
}

}  // namespace forecourse::server
