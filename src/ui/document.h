#pragma once

// The job on the table: the given values, the design computed from them, and the way back.
// Edits are taken down while a page is drawn and carried out by settle() afterwards, so that
// everything within one frame shows the same design.

#include <string>
#include <string_view>
#include <vector>

#include "calc/design.h"
#include "job/fields.h"

namespace thole::ui {

class Document {
 public:
  // Without steps until tell() or the first change, where only a glance is wanted.
  explicit Document(Catalogue catalogue, Telling first = Telling::every_step);

  const Job& given() const { return given_; }
  const Design& design() const { return evaluation_.design(); }
  const Catalogue& catalogue() const { return catalogue_; }
  bool told() const { return told_; }
  void tell();  // between frames

  void set(const Field& field, double value);
  void set_text(const Field& field, std::string_view text);
  void forget(const Field& field);  // back to the estimate, or to Thole's choice
  void apply(const Change& change);
  void replace(const Job& job);             // another job; undo brings this one back
  void set_catalogue(Catalogue catalogue);  // a shop's own; at once
  // Small steps on one field (a stepper held, a slider dragged) become one step of undo.
  void nudge(const Field& field, double value);
  // The stepper or the slider was let go: what follows is another step of undo.
  void let_go() { edits_.push_back({.kind = Edit::Kind::rest}); }
  void undo() { edits_.push_back({.kind = Edit::Kind::back}); }
  void redo() { edits_.push_back({.kind = Edit::Kind::forth}); }

  bool can_undo() const { return !past_.empty(); }
  bool can_redo() const { return !future_.empty(); }

  // Carries out what was taken down. True when the job changed.
  bool settle();

  // The search for what would make it fit goes on between frames, two trials at a time, the proof by
  // itself; true while there is more to try.
  bool search() { return evaluation_.step() && (evaluation_.proving() || evaluation_.step()); }
  void finish_search();  // but for the proof
  bool searching() const { return evaluation_.searching(); }

  // Grows with every change.
  int version() const { return version_; }

 private:
  struct Edit {
    enum class Kind { alter, adjust, rest, open, back, forth } kind = Kind::alter;
    Change what{};
    Job job{};
  };
  void carry_out(const Edit& edit);
  void remember();

  Catalogue catalogue_;
  Job given_{};
  Evaluation evaluation_;
  std::vector<Edit> edits_{};
  std::vector<Job> past_{};
  std::vector<Job> future_{};
  std::string nudged_{};
  int version_ = 0;
  bool told_;
};

}  // namespace thole::ui
