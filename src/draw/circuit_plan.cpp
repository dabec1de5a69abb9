#include "draw/circuit_plan.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

#include "base/number.h"
#include "base/order.h"
#include "draw/sketch.h"

namespace thole {
namespace {

// Px, y down until they are drawn.
constexpr double kWidth = 388.0;      // what a phone's column leaves
constexpr double kLeft = 8.0;         // the bank's posts
constexpr double kRight = 326.0;      // the motor; right of it the volts of its nodes
constexpr double kBankRight = 116.0;  // where the strings meet again
constexpr double kBankInner = 96.0;   // the last node inside a string
constexpr double kRow = 44.0;
constexpr double kText = 10.0;  // of a row, the middle of its text
constexpr double kBar = 31.0;   // ... and of its stroke
constexpr double kBeside = 6.0;
constexpr double kThin = 2.0;
constexpr double kThickest = 20.0;  // of a piece that loses everything
constexpr double kSymbol = 12.0;    // a shorter stroke has none
constexpr double kMotor = 9.0;      // radius
constexpr std::size_t kMostInString = 12;
constexpr std::size_t kMostStrings = 3;
constexpr std::size_t kMostRows = 40;  // of a side
constexpr int kFar = std::numeric_limits<int>::max();

std::size_t at(int index) { return static_cast<std::size_t>(index); }

std::string short_figure(double value) {
  const double size = std::abs(value);
  return fixed(value, size >= 99.95 ? 0 : size >= 0.995 ? 1 : 2);
}

// Of 14 px text, on the wide side: nobody measures type here.
double width_of(const std::string& text, TextRole role) {
  double width = 0.0;
  for (const char c : text) {
    if ((static_cast<unsigned char>(c) & 0xC0u) == 0x80u) continue;  // goes on with the character before it
    const bool narrow = std::string_view(" .,:ijlt[]").find(c) != std::string_view::npos;
    width += narrow ? 4.6 : c >= 'A' && c <= 'Z' ? 9.8 : c >= '0' && c <= '9' ? 8.9 : 8.5;
  }
  return width * (role == TextRole::strong ? 1.13 : 1.0);
}

enum class Zone { bank, out, back };

// A line of the picture: a piece, several folded into one, or a load.
struct Row {
  std::vector<std::size_t> branches{};
  int load = -1;
  int from = 0;
  int to = 0;
  double y = 0.0;  // its upper edge
  double left = 0.0;
  double right = 0.0;
  int labelled = -1;  // the node whose volts stand at its end
  double bar() const { return y + kBar; }
};

struct Upright {
  double x = 0.0;
  double top = 0.0;
  double foot = 0.0;
  bool used = false;
  void reach(double y) {
    top = used ? std::min(top, y) : y;
    foot = used ? std::max(foot, y) : y;
    used = true;
  }
};

class Plan {
 public:
  Plan(const FeederCircuit& circuit, System system) : circuit_(circuit), network_(circuit.network), solution_(circuit.solution), system_(system) {
    order_ = branches_by_loss(solution_);
    rank_.resize(order_.size());
    for (std::size_t k = 0; k < order_.size(); ++k) rank_[order_[k]] = k;
    for (const double loss_W : solution_.branch_W) total_W_ += loss_W;
  }

  Drawing draw() {
    find_zones();
    find_distances();
    place_nodes();
    collect_rows();
    lay_rows();
    drawing_.title = "The feeder as a circuit";
    drawing_.to_scale = false;
    drawing_.high = {kWidth, height_};
    draw_uprights();
    for (const Row& row : rows_) draw_stroke(row);
    for (const Row& row : rows_) draw_texts(row);
    add_text({kLeft + kBeside, kText}, "Bank + " + volts(1), TextRole::strong);
    add_text({kLeft + kBeside, link_y_ + 13.0}, "Bank \u2212 " + volts(0), TextRole::strong);
    drawing_.description = said();
    return std::move(drawing_);
  }

 private:
  // --- which part of the picture a node belongs to ----------------------------------------------
  int node_count() const { return static_cast<int>(network_.nodes.size()); }

  // What is reached from the loads without passing a post is feeder, the rest bank.
  void find_zones() {
    zone_.assign(at(node_count()), Zone::bank);
    std::vector<int> reached;
    const auto reach = [&](int node) {
      if (node < 2 || zone_[at(node)] != Zone::bank) return;
      zone_[at(node)] = Zone::out;
      reached.push_back(node);
    };
    for (const NetworkLoad& load : network_.loads) {
      reach(load.positive);
      reach(load.negative);
    }
    while (!reached.empty()) {
      const int node = reached.back();
      reached.pop_back();
      for (const NetworkBranch& branch : network_.branches) {
        if (branch.from == node) reach(branch.to);
        if (branch.to == node) reach(branch.from);
      }
    }
    zone_[0] = Zone::back;
    zone_[1] = Zone::out;
  }

  // Pieces from the nearer post; that post decides on the side. Inside the bank, from its plus.
  void find_distances() {
    distance_.assign(at(node_count()), kFar);
    distance_[0] = distance_[1] = 0;
    std::vector<int> queue{1, 0};
    for (std::size_t next = 0; next < queue.size(); ++next) {
      const int node = queue[next];
      for (const NetworkBranch& branch : network_.branches) {
        if (branch.from != node && branch.to != node) continue;
        const int other = branch.from == node ? branch.to : branch.from;
        const bool inside = zone_[at(other)] == Zone::bank;
        if (distance_[at(other)] != kFar || (inside && node == 0)) continue;
        distance_[at(other)] = distance_[at(node)] + 1;
        if (!inside) zone_[at(other)] = zone_[at(node)];
        queue.push_back(other);
      }
    }
  }

  bool in_bank(const NetworkBranch& branch) const {
    const bool across = branch.from + branch.to == 1;  // from post to post
    return across || zone_[at(branch.from)] == Zone::bank || zone_[at(branch.to)] == Zone::bank;
  }

  // Nodes of a side stand in the order of their distance, the motor's last.
  void place_nodes() {
    x_.assign(at(node_count()), kLeft);
    const NetworkLoad* motor = network_.loads.empty() ? nullptr : &network_.loads.front();
    for (const Zone zone : {Zone::out, Zone::back}) {
      std::vector<int> side;
      for (int node = 0; node < node_count(); ++node) {
        if (zone_[at(node)] == zone) side.push_back(node);
      }
      const auto place = [&](int node) {
        const bool last = motor != nullptr && (node == motor->positive || node == motor->negative) && node > 1;
        return std::pair(last ? kFar : distance_[at(node)], node);
      };
      std::sort(side.begin(), side.end(), [&](int a, int b) { return place(a) < place(b); });
      for (std::size_t k = 0; k < side.size(); ++k) {
        x_[at(side[k])] = kLeft + (kRight - kLeft) * static_cast<double>(k) / static_cast<double>(std::max<std::size_t>(side.size() - 1, 1));
      }
    }
  }

  // --- rows -------------------------------------------------------------------------------------
  double loss_of(const Row& row) const {
    double loss_W = 0.0;
    for (const std::size_t k : row.branches) loss_W += solution_.branch_W[k];
    return loss_W;
  }

  Row row_of(std::size_t k) const {
    const NetworkBranch& branch = network_.branches[k];
    return {.branches = {k}, .from = branch.from, .to = branch.to};
  }

  void collect_rows() {
    std::vector<Row> out;
    std::vector<Row> across;
    std::vector<Row> back;
    for (std::size_t k = 0; k < network_.branches.size(); ++k) {
      const NetworkBranch& branch = network_.branches[k];
      if (in_bank(branch)) continue;
      Row row = row_of(k);
      if (x_[at(row.from)] > x_[at(row.to)]) std::swap(row.from, row.to);
      const bool same = zone_[at(branch.from)] == zone_[at(branch.to)];
      (!same ? across : zone_[at(branch.from)] == Zone::out ? out : back).push_back(std::move(row));
    }
    const auto x = [&](const Row& row) { return std::pair(x_[at(row.from)], x_[at(row.to)]); };
    out = sorted(std::move(out), [&](const Row& a, const Row& b) { return x(a) < x(b); });
    back = sorted(std::move(back), [&](const Row& a, const Row& b) { return x(a) > x(b); });
    for (std::vector<Row>* side : {&out, &across, &back}) keep_worst(*side);
    for (std::size_t k = network_.loads.size(); k-- > 0;) {  // the motor last
      const NetworkLoad& load = network_.loads[k];
      across.push_back({.load = static_cast<int>(k), .from = load.positive, .to = load.negative});
    }
    rows_ = std::move(out);
    rows_.insert(rows_.end(), across.begin(), across.end());
    add_bank_rows();
    first_back_ = rows_.size();
    rows_.insert(rows_.end(), back.begin(), back.end());
  }

  void keep_worst(std::vector<Row>& side) {
    if (side.size() <= kMostRows) return;
    std::vector<double> losses_W;
    for (const Row& row : side) losses_W.push_back(loss_of(row));
    std::nth_element(losses_W.begin(), losses_W.begin() + static_cast<std::ptrdiff_t>(kMostRows), losses_W.end(), std::greater<>());
    const double least_W = losses_W[kMostRows];
    std::size_t left = kMostRows;
    std::vector<Row> kept;
    for (Row& row : side) {
      if (left > 0 && loss_of(row) >= least_W) {
        kept.push_back(std::move(row));
        --left;
      } else {
        ++left_out_;
      }
    }
    side = std::move(kept);
  }

  // The pieces of one string, from plus to minus; or of whatever hangs together inside the bank.
  std::vector<std::vector<std::size_t>> strings() const {
    std::vector<std::vector<std::size_t>> found;
    std::vector<bool> taken(network_.branches.size(), false);
    for (std::size_t first = 0; first < network_.branches.size(); ++first) {
      if (taken[first] || !in_bank(network_.branches[first])) continue;
      taken[first] = true;
      std::vector<std::size_t> string{first};
      for (std::size_t next = 0; next < string.size(); ++next) {
        const NetworkBranch& here = network_.branches[string[next]];
        for (std::size_t k = 0; k < network_.branches.size(); ++k) {
          const NetworkBranch& other = network_.branches[k];
          if (taken[k] || !in_bank(other)) continue;
          const auto meets = [&](int node) { return zone_[at(node)] == Zone::bank && (node == here.from || node == here.to); };
          if (!meets(other.from) && !meets(other.to)) continue;
          taken[k] = true;
          string.push_back(k);
        }
      }
      const auto place = [&](std::size_t k) {
        const NetworkBranch& branch = network_.branches[k];
        const auto far = [&](int node) { return node == 0 ? kFar : distance_[at(node)]; };
        const int a = far(branch.from);
        const int b = far(branch.to);
        return std::pair(std::min(a, b), std::max(a, b));
      };
      string = sorted(std::move(string), [&](std::size_t a, std::size_t b) { return place(a) < place(b); });
      found.push_back(std::move(string));
    }
    return found;
  }

  void add_bank_rows() {
    std::vector<std::vector<std::size_t>> all = strings();
    if (all.size() > kMostStrings) {  // those that lose most, the rest in one
      const auto loss = [&](const std::vector<std::size_t>& string) { return loss_of({.branches = string}); };
      all = sorted(std::move(all), [&](const auto& a, const auto& b) { return loss(a) > loss(b); });
      for (std::size_t k = kMostStrings; k < all.size(); ++k) {
        all[kMostStrings - 1].insert(all[kMostStrings - 1].end(), all[k].begin(), all[k].end());
      }
      folded_strings_ = all.size() - kMostStrings + 1;
      all.resize(kMostStrings);
    }
    for (std::size_t s = 0; s < all.size(); ++s) {
      const std::vector<std::size_t>& string = all[s];
      const bool rest = folded_strings_ > 0 && s + 1 == all.size();
      if (rest || string.size() > kMostInString) {
        rows_.push_back({.branches = string, .from = 1, .to = 0});
        continue;
      }
      lay_string(string);
    }
  }

  void lay_string(const std::vector<std::size_t>& string) {
    std::vector<int> inner;
    const auto meet = [&](int node) {
      if (zone_[at(node)] == Zone::bank && std::find(inner.begin(), inner.end(), node) == inner.end()) inner.push_back(node);
    };
    for (const std::size_t k : string) {
      Row row = row_of(k);
      const auto far = [&](int node) { return node == 0 ? kFar : distance_[at(node)]; };
      if (far(row.from) > far(row.to)) std::swap(row.from, row.to);
      meet(row.from);
      meet(row.to);
      rows_.push_back(std::move(row));
    }
    for (std::size_t k = 0; k < inner.size(); ++k) {
      x_[at(inner[k])] = kLeft + (kBankInner - kLeft) * static_cast<double>(k + 1) / static_cast<double>(inner.size());
    }
  }

  // The bank's minus stands right of its strings, and left of what comes back below them.
  double x_in(int node, bool above) const { return node == 0 && above ? kBankRight : x_[at(node)]; }

  void lay_rows() {
    uprights_.resize(at(node_count()));
    double y = 20.0;  // below the plus post's volts
    std::vector<bool> labelled(at(node_count()), false);
    labelled[0] = labelled[1] = true;
    for (std::size_t k = 0; k <= rows_.size(); ++k) {
      if (k == first_back_) {
        link_y_ = y + 8.0;
        y += 28.0;
      }
      if (k == rows_.size()) break;
      Row& row = rows_[k];
      const bool above = k < first_back_;
      row.y = y;
      y += kRow;
      const double a = x_in(row.from, above);
      const double b = x_in(row.to, above);
      row.left = std::min(a, b);
      row.right = std::max(a, b);
      const int end = a > b ? row.from : row.to;
      for (const int node : {row.from, row.to}) {
        Upright& upright = node == 0 && above ? bank_minus_ : uprights_[at(node)];
        upright.x = x_in(node, above);
        upright.reach(row.bar());
      }
      if (row.load < 0 && !labelled[at(end)]) {
        row.labelled = end;
        labelled[at(end)] = true;
      }
    }
    uprights_[0].x = kLeft;
    uprights_[0].reach(link_y_);
    bank_minus_.x = kBankRight;
    bank_minus_.reach(link_y_);
    height_ = y + 4.0;
  }

  // --- strokes ----------------------------------------------------------------------------------
  Point on(double x, double y) const { return {x, height_ - y}; }

  void draw_uprights() {
    for (const Upright& upright : uprights_) draw_upright(upright);
    draw_upright(bank_minus_);
    add_polyline(drawing_, {on(kLeft, link_y_), on(kBankRight, link_y_)}, Line::outline);
  }
  void draw_upright(const Upright& upright) {
    if (!upright.used) return;
    add_polyline(drawing_, {on(upright.x, upright.top), on(upright.x, upright.foot)}, Line::outline);
  }

  // Between what crosses a stroke, so that no symbol looks like a joint.
  double free_middle(const Row& row) const {
    std::vector<double> xs{row.left, row.right};
    for (const Upright& upright : uprights_) {
      const bool crosses = upright.used && upright.top < row.bar() && upright.foot > row.bar();
      if (crosses && upright.x > row.left && upright.x < row.right) xs.push_back(upright.x);
    }
    std::sort(xs.begin(), xs.end());
    double best = 0.5 * (row.left + row.right);
    double widest = 0.0;
    for (std::size_t k = 0; k + 1 < xs.size(); ++k) {
      if (xs[k + 1] - xs[k] <= widest) continue;
      widest = xs[k + 1] - xs[k];
      best = 0.5 * (xs[k] + xs[k + 1]);
    }
    return best;
  }

  // More than two strokes meet where the node's upright goes on past this one.
  bool meets_more(int node, double y) const {
    const Upright& upright = node == 0 && y < link_y_ ? bank_minus_ : uprights_[at(node)];
    return upright.top < y && upright.foot > y;
  }

  bool is_worst(const Row& row) const {
    return std::any_of(row.branches.begin(), row.branches.end(), [&](std::size_t k) { return rank_[k] == 0 && solution_.branch_W[k] > 0.0; });
  }

  void draw_stroke(const Row& row) {
    const double y = row.bar();
    const double middle = free_middle(row);
    for (const int node : {row.from, row.to}) {
      if (!meets_more(node, y)) continue;
      drawing_.circles.push_back({.centre = on(x_in(node, y < link_y_), y), .radius = 3.0, .line = Line::none, .fill = Fill::strong});
    }
    if (row.load >= 0) {
      add_polyline(drawing_, {on(row.left, y), on(row.right, y)}, Line::outline);
      const double x = row.load == 0 ? row.right : middle;
      drawing_.circles.push_back({.centre = on(x, y), .radius = row.load == 0 ? kMotor : 0.6 * kMotor, .line = Line::outline, .fill = row.load == 0 ? Fill::accent : Fill::paper});
      return;
    }
    const double share = total_W_ > 0.0 ? loss_of(row) / total_W_ : 0.0;
    const double half = 0.5 * std::max(kThin, kThickest * share);
    add_box(drawing_, on(row.left, y + half), on(row.right, y - half), Line::none, is_worst(row) ? Fill::warning : Fill::strong);
    if (row.branches.size() == 1 && row.right - row.left >= kSymbol) draw_symbol(circuit_.kinds[row.branches.front()], middle, y);
    if (row.branches.size() > 1) draw_symbol(PieceKind::block, middle, y);
  }

  void draw_symbol(PieceKind kind, double x, double y) {
    const auto gap = [&](double half_width, double half_height, Line line) {
      add_box(drawing_, on(x - half_width, y + half_height), on(x + half_width, y - half_height), line, Fill::paper);
    };
    switch (kind) {
      case PieceKind::block:
        gap(2.5, 8.0, Line::none);
        add_polyline(drawing_, {on(x - 2.5, y - 8.0), on(x - 2.5, y + 8.0)}, Line::outline);
        add_box(drawing_, on(x + 1.5, y + 4.5), on(x + 4.5, y - 4.5), Line::none, Fill::strong);
        break;
      case PieceKind::device:
        gap(5.5, 5.0, Line::outline);
        break;
      case PieceKind::lug:
      case PieceKind::plug:
        drawing_.circles.push_back({.centre = on(x, y), .radius = 3.5, .line = Line::outline, .fill = Fill::paper});
        break;
      case PieceKind::cable:
      case PieceKind::jumper:
      case PieceKind::load:
        break;
    }
  }

  // --- texts ------------------------------------------------------------------------------------
  std::string volts(int node) const { return fixed(solution_.node_V[at(node)], 2) + " V"; }

  std::string text_of(const Row& row) const {
    if (row.load >= 0) {
      const auto k = at(row.load);
      return network_.loads[k].label + ": " + fixed(solution_.load_V[k], 2) + " V, " + short_figure(solution_.load_A[k]) + " A, " +
             short_figure(solution_.load_V[k] * solution_.load_A[k]) + " W";
    }
    if (row.branches.size() > 1) {
      const bool several = folded_strings_ > 0 && &row == &rows_[first_back_ - 1];
      const std::string what = several ? std::to_string(folded_strings_) + " strings more" : std::to_string(row.branches.size()) + " pieces in a row";
      return what + ": " + short_figure(loss_of(row)) + " W";
    }
    const std::size_t k = row.branches.front();
    const PieceFigures figures = piece_figures(circuit_, k, system_);
    std::string text = std::to_string(rank_[k] + 1) + ". " + network_.branches[k].label + ": " + figures.amperes + ", " + figures.watts;
    if (!figures.degrees.empty()) text += ", " + figures.degrees;
    return text;
  }

  // Where uprights pass through a line of text.
  std::vector<double> passing(double y) const {
    std::vector<double> xs;
    const auto pass = [&](const Upright& upright) {
      if (upright.used && upright.top < y + 9.0 && upright.foot > y - 9.0) xs.push_back(upright.x);
    };
    for (const Upright& upright : uprights_) pass(upright);
    pass(bank_minus_);
    std::sort(xs.begin(), xs.end());
    return xs;
  }

  // The left end of a text this wide: between two uprights when it fits there, nearest to its stroke.
  double free_place(double width, double y, double near_x) const {
    std::vector<double> xs = passing(y);
    xs.insert(xs.begin(), -kBeside);
    xs.push_back(kWidth + kBeside);
    double best = std::clamp(near_x, 0.0, std::max(0.0, kWidth - width));
    double best_off = kWidth;
    for (std::size_t k = 0; k + 1 < xs.size(); ++k) {
      const double low = xs[k] + kBeside;
      const double high = xs[k + 1] - kBeside - width;
      if (high < low) continue;
      const double x = std::clamp(near_x, low, high);
      if (std::abs(x - near_x) < best_off) {
        best_off = std::abs(x - near_x);
        best = x;
      }
    }
    return best;
  }

  void draw_texts(const Row& row) {
    const bool worst = is_worst(row);
    const std::string text = worst ? text_of(row) + ", worst" : text_of(row);
    const TextRole role = worst || row.load == 0 ? TextRole::strong : TextRole::note;
    const double y = row.y + kText;
    const double x = free_place(width_of(text, role), y, row.load == 0 ? kWidth : row.left + 2.0);
    add_text({x, y}, text, role);
    if (row.labelled >= 0) add_text({row.right + kBeside, row.bar()}, volts(row.labelled), TextRole::note);
  }

  // On paper, so that no upright runs through it.
  void add_text(Point place, const std::string& text, TextRole role) {
    const double width = width_of(text, role);
    for (const double x : passing(place.y)) {
      if (x > place.x - 2.0 && x < place.x + width + 2.0) {
        add_box(drawing_, on(x - 2.0, place.y + 9.0), on(x + 2.0, place.y - 9.0), Line::none, Fill::paper);
      }
    }
    add_label(drawing_, on(place.x, place.y), text, Align::left, role);
  }

  std::string said() const {
    std::string text;
    for (std::size_t k = 0; k < network_.loads.size(); ++k) {
      text += network_.loads[k].label + " " + fixed(solution_.load_V[k], 2) + " V, " + short_figure(solution_.load_A[k]) + " A. ";
    }
    text += "Bank " + fixed(solution_.node_V[1], 2) + " V. " + short_figure(total_W_) + " W are lost";
    if (!order_.empty() && solution_.branch_W[order_.front()] > 0.0) {
      const std::size_t worst = order_.front();
      text += ", most of it, " + short_figure(solution_.branch_W[worst]) + " W, in " + network_.branches[worst].label;
    }
    text += ".";
    if (left_out_ > 0) text += " " + std::to_string(left_out_) + " pieces that lose less are in the list alone.";
    return text;
  }

  const FeederCircuit& circuit_;
  const Network& network_;
  const NetworkSolution& solution_;
  System system_;
  std::vector<std::size_t> order_{};
  std::vector<std::size_t> rank_{};
  double total_W_ = 0.0;
  std::vector<Zone> zone_{};
  std::vector<int> distance_{};
  std::vector<double> x_{};
  std::vector<Row> rows_{};  // out, across, bank, back
  std::size_t first_back_ = 0;
  std::size_t folded_strings_ = 0;
  std::size_t left_out_ = 0;
  std::vector<Upright> uprights_{};
  Upright bank_minus_{};
  double link_y_ = 0.0;
  double height_ = 0.0;
  Drawing drawing_{};
};

}  // namespace

PieceFigures piece_figures(const FeederCircuit& circuit, std::size_t branch, System system) {
  // A block that is charged by others shows it by its sign; elsewhere the way is of no matter.
  const double current_A = circuit.solution.branch_A[branch];
  const bool charged = circuit.kinds[branch] == PieceKind::block && current_A < 0.0;
  PieceFigures figures{.amperes = (charged ? "\u2212" : "") + short_figure(std::abs(current_A)) + " A",
                       .watts = short_figure(circuit.solution.branch_W[branch]) + " W"};
  if (circuit.temperature_C[branch] != 0.0) figures.degrees = show(std::round(circuit.temperature_C[branch]), "C", system).text();
  return figures;
}

Drawing circuit_plan_picture(const FeederCircuit& circuit, System system) {
  if (!circuit.solution.solved) {
    return {.title = "The feeder as a circuit", .description = circuit.solution.message, .to_scale = false};
  }
  return Plan(circuit, system).draw();
}

}  // namespace thole
