#include "io/markup.h"

#include "base/number.h"
#include "io/text.h"

namespace thole {
namespace {

std::string_view entity(char c) {
  switch (c) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    default:
      return {};
  }
}

}  // namespace

void Markup::raw(std::string_view markup) { out_ += markup; }

void Markup::text(std::string_view text) {
  for (const char c : plain_line(text, std::string::npos)) {
    const std::string_view written = entity(c);
    if (written.empty()) {
      out_ += c;
    } else {
      out_ += written;
    }
  }
}

void Markup::number(double value, int decimals) { out_ += trimmed(fixed(value, decimals)); }

void Markup::open(std::string_view tag) {
  out_ += '<';
  out_ += tag;
  out_ += '>';
}

void Markup::close(std::string_view tag) {
  out_ += "</";
  out_ += tag.substr(0, tag.find(' '));
  out_ += ">\n";
}

void Markup::line(std::string_view tag, std::string_view content) {
  open(tag);
  text(content);
  close(tag);
}

void Markup::attribute(std::string_view name, std::string_view content) {
  out_ += ' ';
  out_ += name;
  out_ += "=\"";
  text(content);
  out_ += '"';
}

void Markup::attribute(std::string_view name, double value) {
  attribute(name, trimmed(fixed(value, 1)));
}

std::string escaped(std::string_view text) {
  Markup markup;
  markup.text(text);
  return markup.take();
}

}  // namespace thole
