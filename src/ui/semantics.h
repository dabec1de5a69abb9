#pragma once

// What the page says, as a tree: a canvas is silent, so every widget is recorded here when it is
// drawn. The web shell mirrors the tree as real elements; the tests drive it by role and name.

#include <string>
#include <string_view>
#include <vector>

namespace thole::ui {

enum class Role {
  heading,
  text,
  button,
  textbox,
  slider,
  progress,
  checkbox,
  select,
  radio,
  image,
  status,
  alert,
  group,
  banner,
  navigation,
  main,
  list,
  listitem
};

std::string_view role_name(Role role);

struct SemOption {
  std::string key{};
  std::string label{};
};

// Where an element stands: in the scrolled document, or fixed to the viewport.
enum class Pinned { no, top, bottom, side };

struct SemNode {
  std::string id{};
  Role role = Role::text;
  int parent = -1;      // index in the tree; -1 for the root
  int level = 0;        // of a heading
  std::string name{};   // accessible name
  std::string value{};  // text of a field, key of a select, "1" of a checked box
  std::string unit{};
  std::string description{};  // help
  std::string error{};
  bool disabled = false;
  bool checked = false;
  bool expandable = false;
  bool expanded = false;
  bool current = false;  // the page shown, the option taken
  double min = 0.0;
  double max = 0.0;
  double step = 0.0;
  std::vector<SemOption> options{};
  std::string inputmode{};  // "decimal", "numeric", "text"
  std::string action{};     // what the shell does itself, in the user's gesture: "copy-link"
  Pinned pinned = Pinned::no;
  float x = 0.0f;  // CSS px; document coordinates, or viewport ones when pinned
  float y = 0.0f;
  float width = 0.0f;
  float height = 0.0f;
  float text_size = 0.0f;  // of an input, so that the real one matches the painted one
};

class SemTree {
 public:
  void begin();
  // Adds a node under the open group and returns its index.
  int add(SemNode node);
  void open(SemNode group);
  void close();
  // Gives an open or closed node its final height.
  void stretch(int index, float bottom);

  const std::vector<SemNode>& nodes() const { return nodes_; }
  const SemNode* find(std::string_view id) const;
  const SemNode* find(Role role, std::string_view name) const;

  std::string json() const;

 private:
  std::vector<SemNode> nodes_{};
  std::vector<int> open_{};
};

}  // namespace thole::ui
