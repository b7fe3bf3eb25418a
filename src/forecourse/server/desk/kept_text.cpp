#include "forecourse/server/desk/kept_text.h"

namespace forecourse::server {
namespace {

std::size_t size_of(const Step& step) { return step.label.size() + step.change.in.size() + step.change.out.size(); }

void add_step(KeptText& kept, const Step& step) {
  kept.steps.resize(kept.done);
  kept.steps.push_back(step);
  std::size_t size = 0;
  for (const Step& each : kept.steps) size += size_of(each);
  while (kept.steps.size() > 1 && (kept.steps.size() > most_steps || size > largest_history)) {
    size -= size_of(kept.steps.front());
    kept.steps.pop_front();
  }
  kept.done = kept.steps.size();
}

/// The text after a move; empty where the move does not fit.
std::optional<std::string> text_after(const KeptText& kept, const Move& move) {
  if (move.kind == Move::Kind::step) return forward(move.step.change, kept.text);
  const bool back = move.kind == Move::Kind::undo;
  const Step* step = back ? undoable(kept) : redoable(kept);
  if (step == nullptr) return std::nullopt;
  return back ? backward(step->change, kept.text) : forward(step->change, kept.text);
}

}  // namespace

const Step* undoable(const KeptText& kept) { return kept.done > 0 ? &kept.steps[kept.done - 1] : nullptr; }

const Step* redoable(const KeptText& kept) { return kept.done < kept.steps.size() ? &kept.steps[kept.done] : nullptr; }

bool make(KeptText& kept, const Move& move) {
  std::optional<std::string> text = text_after(kept, move);
  if (!text) return false;
  if (move.kind == Move::Kind::step) add_step(kept, move.step);
  if (move.kind == Move::Kind::undo) --kept.done;
  if (move.kind == Move::Kind::redo) ++kept.done;
  kept.text = std::move(*text);
  ++kept.revision;
  return true;
}

}  // namespace forecourse::server
