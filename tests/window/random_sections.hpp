// Sections drawn at random from a seed, for laws that have to hold on all of them.
#pragma once

#include <cmath>
#include <cstdint>
#include <string>

#include "dewgap/errors.hpp"
#include "dewgap/numerics/split_mix.hpp"
#include "dewgap/window/section.hpp"
#include "dewgap/window/section_plan_kernel.hpp"

namespace dewgap::test {

class RandomSections {
 public:
  explicit RandomSections(std::uint64_t seed) : words_(seed) {}

  /// A block of 40 to 240 mm by 30 to 130 mm, half of them with a step in the face to the room, and one to
  /// eight rectangles over it; conductivities over four decades, 0.01 to 100 W/(m K). Room above, outdoors
  /// below, cut-offs at the sides; resistances of faces 0.02 to 0.5 m2 K/W.
  Section next() {
    const int width_mm = whole(40, 240);
    const int height_mm = whole(30, 130);
    const int step_mm = whole(0, 1) == 0 ? 0 : whole(5, height_mm - 10);
    const int step_at_mm = whole(10, width_mm - 10);
    const double top_right_m = metres(height_mm - step_mm);
    Section section;
    section.items.push_back({"block", solid(), {{0.0, 0.0}, {metres(width_mm), 0.0}}, {}});
    auto& outline = section.items.front().polygon;
    outline.push_back({metres(width_mm), top_right_m});
    if (step_mm > 0) {
      outline.insert(outline.end(),
                     {{metres(step_at_mm), top_right_m}, {metres(step_at_mm), metres(height_mm)}});
    }
    outline.push_back({0.0, metres(height_mm)});
    section.boundaries = {{"room",
                           AirSide{AirRole::room, 20.0, resistance(), CornerFilm{resistance(), 0.030}},
                           {EdgesAlong{{metres(width_mm), top_right_m}, {0.0, metres(height_mm)}}}},
                          {"outdoors", AirSide{AirRole::outdoors, 0.0, resistance(), {}}, {EdgesOnY{0.0}}},
                          {"sides", CutOff{}, {EdgesOnX{0.0}, EdgesOnX{metres(width_mm)}}}};
    for (int wanted = whole(1, 8); wanted > 0; --wanted) {
      add_rectangle(section, width_mm, height_mm - step_mm);
    }
    return section;
  }

  double between(double low, double high) { return low + (high - low) * words_.inside_unit_interval(); }

 private:
  int whole(int low, int high) {
    return low + static_cast<int>(words_.next() % static_cast<std::uint64_t>(high - low + 1));
  }
  static double metres(int millimetres) { return 1e-3 * millimetres; }
  SolidFill solid() { return {std::pow(10.0, between(-2.0, 2.0))}; }
  double resistance() { return std::exp(between(std::log(0.02), std::log(0.5))); }

  /// One that hides no earlier item wholly; none when three tries do.
  void add_rectangle(Section& section, int width_mm, int height_mm) {
    for (int tries = 0; tries < 3; ++tries) {
      const int left = whole(0, width_mm - 1);
      const int right = whole(left + 1, width_mm);
      const int low = whole(0, height_mm - 1);
      const int high = whole(low + 1, height_mm);
      SectionItem item{"part " + std::to_string(section.items.size()), solid(), {}, {}};
      item.polygon = {{metres(left), metres(low)},
                      {metres(right), metres(low)},
                      {metres(right), metres(high)},
                      {metres(left), metres(high)}};
      for (const auto& earlier : section.items) {
        item.replaces.push_back(earlier.name);
      }
      section.items.push_back(item);
      try {
        section_kernel::plan_of(section);
        return;
      } catch (const InvalidInput&) {
        section.items.pop_back();
      }
    }
  }

  numerics::SplitMix64 words_;
};

}  // namespace dewgap::test
