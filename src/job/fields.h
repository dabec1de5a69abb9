#pragma once

// One table describes every field of the job. The JSON reader and writer, the link, the schema, the
// command line's help, the wizard's forms, the range checks and the handbook are loops over it.

#include <span>
#include <string>
#include <string_view>

#include "base/trace.h"
#include "job/job.h"

namespace thole {

enum class Kind { number, count, toggle, choice, text, catalogue_id };

struct Option {
  std::string_view key{};    // in files
  std::string_view label{};  // on screen
};

// What can be done with a value once its type is forgotten: one table for each type.
struct ValueType {
  double (*get)(const void*) = nullptr;  // null for text
  void (*set)(void*, double) = nullptr;
  const std::string& (*get_text)(const void*) = nullptr;  // null for all else
  void (*set_text)(void*, std::string_view) = nullptr;
  Origin& (*origin)(void*) = nullptr;
};

// How to reach one field of a job. Numbers of every kind pass as double (a toggle is 0 or 1, a
// choice its position in `options`), text through the text pair; the member itself stays typed.
struct Access {
  void* (*place)(Job&) = nullptr;
  const ValueType* type = nullptr;

  bool is_text() const { return type->get == nullptr; }
  double get(const Job& job) const { return type->get(in(job)); }
  void set(Job& job, double value) const { type->set(place(job), value); }
  const std::string& get_text(const Job& job) const { return type->get_text(in(job)); }
  void set_text(Job& job, std::string_view text) const { type->set_text(place(job), text); }
  Origin origin(const Job& job) const { return type->origin(in(job)); }
  void set_origin(Job& job, Origin origin) const { type->origin(place(job)) = origin; }

 private:
  void* in(const Job& job) const { return place(const_cast<Job&>(job)); }  // only to be read
};

struct Field {
  int number = 0;              // key in the link: permanent, never used again for another field
  std::string_view section{};  // "boat"; empty for fields of the job itself
  std::string_view key{};      // "length_m": the member's name; the unit is its suffix
  Kind kind = Kind::number;
  Access access{};
  std::string_view label{};
  double min = 0.0;  // allowed range, in the unit of the key
  double max = 0.0;        // of text: bytes, 0 for a short line
  double quantum = 0.0;  // what the link rounds to
  double step = 0.0;     // what a stepper adds
  std::span<const Option> options{};
  std::string_view list{};  // for catalogue_id: "motors", "blocks" ...

  std::string path() const;       // "boat.length_m", "title"
  std::string_view unit() const;  // "m"; "" when dimensionless
};

std::span<const Field> all_fields();

// One sentence for who fills it in: what is meant, how it is measured. In a table of its own, which the
// engine alone does not carry.
std::string_view help_of(const Field& field);

// The field with this path ("feeder.run_m"); null when there is none.
const Field* find_field(std::string_view path);
const Field* find_field(int number);

struct Section {
  std::string_view key{};    // "feeder"
  std::string_view label{};  // "Feeder"
};
std::span<const Section> all_sections();

// The unit that a name ends in: "length_m" -> "m", "drop_frac" -> "", "deck" -> "".
std::string_view unit_of(std::string_view name);

// What the range check says of a value, in one sentence; empty when it is fine. NaN is refused.
std::string range_message(const Field& field, double value);

// The known value as a short text without unit: choices by label, toggles as yes or no.
std::string plain_text(const Field& field, const Job& job);

// True when two jobs hold the same in this field, from the same origin.
bool same_value(const Field& field, const Job& a, const Job& b);

void clear(const Field& field, Job& job);

// Sets or clears the field that the change names; a change to no known field does nothing.
void apply(const Change& change, Job& job);

}  // namespace thole
