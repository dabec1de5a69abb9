#include "ui/document.h"

#include <utility>

#include "calc/proof.h"

namespace thole::ui {
namespace {

constexpr std::size_t kUndoDepth = 200;

}  // namespace

Document::Document(Catalogue catalogue, Telling first)
    : catalogue_(std::move(catalogue)),
      evaluation_(given_, catalogue_, {}, first, first == Telling::every_step ? kAll : Beyond{}),
      told_(first == Telling::every_step) {}

void Document::tell() {
  if (std::exchange(told_, true)) return;
  evaluation_ = Evaluation(given_, catalogue_, design().outcome, Telling::every_step, kAll);
}

void Document::set(const Field& field, double value) {
  apply({.field = field.path(), .value = value});
}

void Document::set_text(const Field& field, std::string_view text) {
  apply({.field = field.path(), .text = std::string(text)});
}

void Document::forget(const Field& field) { apply({.field = field.path(), .clear = true}); }

void Document::apply(const Change& change) {
  edits_.push_back({.kind = Edit::Kind::alter, .what = change});
}

void Document::nudge(const Field& field, double value) {
  edits_.push_back({.kind = Edit::Kind::adjust, .what = {.field = field.path(), .value = value}});
}

void Document::replace(const Job& job) { edits_.push_back({.kind = Edit::Kind::open, .job = job}); }

void Document::set_catalogue(Catalogue catalogue) {
  catalogue_ = std::move(catalogue);
  evaluation_ = Evaluation(given_, catalogue_, {}, Telling::every_step, kAll);
  told_ = true;
  ++version_;
}

void Document::finish_search() {
  while (!evaluation_.proving() && evaluation_.step()) {
  }
}

void Document::remember() {
  future_.clear();
  past_.push_back(given_);
  if (past_.size() > kUndoDepth) past_.erase(past_.begin());
}

void Document::carry_out(const Edit& edit) {
  const bool same_nudge = edit.kind == Edit::Kind::adjust && nudged_ == edit.what.field;
  nudged_ = edit.kind == Edit::Kind::adjust ? edit.what.field : "";
  switch (edit.kind) {
    case Edit::Kind::adjust:
    case Edit::Kind::alter:
      if (!same_nudge) remember();
      thole::apply(edit.what, given_);
      break;
    case Edit::Kind::rest:
      break;
    case Edit::Kind::open:
      remember();
      given_ = edit.job;
      break;
    case Edit::Kind::back:
      if (past_.empty()) return;
      future_.push_back(std::exchange(given_, past_.back()));
      past_.pop_back();
      break;
    case Edit::Kind::forth:
      if (future_.empty()) return;
      past_.push_back(std::exchange(given_, future_.back()));
      future_.pop_back();
      break;
  }
}

bool Document::settle() {
  bool altered = false;
  bool another = false;
  for (const Edit& edit : std::exchange(edits_, {})) {
    carry_out(edit);
    if (edit.kind != Edit::Kind::rest) altered = true;
    if (edit.kind == Edit::Kind::open) another = true;
  }
  if (!altered) return false;
  evaluation_ = Evaluation(given_, catalogue_, another ? Outcome{} : design().outcome, Telling::every_step, kAll);
  told_ = true;
  // Another job is read from the start: its first word is its verdict.
  if (another) finish_search();
  ++version_;
  return true;
}

}  // namespace thole::ui
