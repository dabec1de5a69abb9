#include "ui/semantics.h"

#include "base/number.h"

namespace thole::ui {
namespace {

void put_text(std::string& out, std::string_view key, std::string_view text) {
  if (text.empty()) return;
  out += ",\"";
  out += key;
  out += "\":\"";
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '"' || c == '\\') {
      out += '\\';
      out += c;
    } else if (byte < 0x20) {
      constexpr char kHex[] = "0123456789abcdef";
      out += "\\u00";
      out += kHex[byte >> 4];
      out += kHex[byte & 15];
    } else {
      out += c;
    }
  }
  out += '"';
}

void put_flag(std::string& out, std::string_view key, bool on) {
  if (!on) return;
  out += ",\"";
  out += key;
  out += "\":true";
}

void put_number(std::string& out, std::string_view key, double value, int decimals) {
  out += ",\"";
  out += key;
  out += "\":";
  out += fixed(value, decimals);
}

std::string_view pinned_name(Pinned pinned) {
  switch (pinned) {
    case Pinned::top:
      return "top";
    case Pinned::bottom:
      return "bottom";
    case Pinned::side:
      return "side";
    case Pinned::no:
      return "";
  }
  return "";
}

}  // namespace

std::string_view role_name(Role role) {
  switch (role) {
    case Role::heading:
      return "heading";
    case Role::text:
      return "text";
    case Role::button:
      return "button";
    case Role::textbox:
      return "textbox";
    case Role::slider:
      return "slider";
    case Role::progress:
      return "progress";
    case Role::checkbox:
      return "checkbox";
    case Role::select:
      return "select";
    case Role::radio:
      return "radio";
    case Role::image:
      return "img";
    case Role::status:
      return "status";
    case Role::alert:
      return "alert";
    case Role::group:
      return "group";
    case Role::banner:
      return "banner";
    case Role::navigation:
      return "navigation";
    case Role::main:
      return "main";
    case Role::list:
      return "list";
    case Role::listitem:
      return "listitem";
  }
  return "text";
}

void SemTree::begin() {
  nodes_.clear();
  open_.clear();
}

int SemTree::add(SemNode node) {
  node.parent = open_.empty() ? -1 : open_.back();
  nodes_.push_back(std::move(node));
  return static_cast<int>(nodes_.size()) - 1;
}

void SemTree::open(SemNode group) { open_.push_back(add(std::move(group))); }

void SemTree::close() {
  if (!open_.empty()) open_.pop_back();
}

void SemTree::stretch(int index, float bottom) {
  SemNode& node = nodes_[static_cast<std::size_t>(index)];
  node.height = bottom - node.y;
}

const SemNode* SemTree::find(std::string_view id) const {
  for (const SemNode& node : nodes_) {
    if (node.id == id) return &node;
  }
  return nullptr;
}

const SemNode* SemTree::find(Role role, std::string_view name) const {
  for (const SemNode& node : nodes_) {
    if (node.role == role && node.name == name) return &node;
  }
  return nullptr;
}

std::string SemTree::json() const {
  std::string out = "[";
  for (std::size_t i = 0; i < nodes_.size(); ++i) {
    const SemNode& node = nodes_[i];
    out += i == 0 ? "{\"parent\":" : ",{\"parent\":";
    out += std::to_string(node.parent);
    put_text(out, "id", node.id);
    put_text(out, "role", role_name(node.role));
    if (node.level > 0) put_number(out, "level", node.level, 0);
    put_text(out, "name", node.name);
    put_text(out, "value", node.value);
    put_text(out, "unit", node.unit);
    put_text(out, "description", node.description);
    put_text(out, "error", node.error);
    put_flag(out, "disabled", node.disabled);
    put_flag(out, "checked", node.checked);
    put_flag(out, "expandable", node.expandable);
    put_flag(out, "expanded", node.expanded);
    put_flag(out, "current", node.current);
    if (node.max > node.min) {
      put_number(out, "min", node.min, 4);
      put_number(out, "max", node.max, 4);
      put_number(out, "step", node.step, 4);
    }
    if (!node.options.empty()) {
      out += ",\"options\":[";
      for (std::size_t k = 0; k < node.options.size(); ++k) {
        out += k == 0 ? "{\"n\":" : ",{\"n\":";
        out += std::to_string(k);
        put_text(out, "key", node.options[k].key);
        put_text(out, "label", node.options[k].label);
        out += '}';
      }
      out += ']';
    }
    put_text(out, "inputmode", node.inputmode);
    put_text(out, "action", node.action);
    put_text(out, "pinned", pinned_name(node.pinned));
    put_number(out, "x", static_cast<double>(node.x), 1);
    put_number(out, "y", static_cast<double>(node.y), 1);
    put_number(out, "w", static_cast<double>(node.width), 1);
    put_number(out, "h", static_cast<double>(node.height), 1);
    if (node.text_size > 0.0f) {
      put_number(out, "size", static_cast<double>(node.text_size), 1);
    }
    out += '}';
  }
  return out += ']';
}

}  // namespace thole::ui
