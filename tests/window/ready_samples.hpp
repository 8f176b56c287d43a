// Ready sections to test: usual ones, and ones of random permitted sizes.
#pragma once

#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

#include "dewgap/errors.hpp"
#include "dewgap/numerics/split_mix.hpp"
#include "dewgap/window/ready_sections.hpp"

namespace dewgap::test {

/// Conductance of a closed air space of some 25 mm, ISO 10077-1 Table C.1: 0.179 m2 K/W.
inline constexpr double usual_gap_W_m2K = 1.0 / 0.179;

inline ReadySheet usual_sheet(const SheetPlace& place = OnSash{}) {
  return {.place = place, .gap_conductance_W_m2K = usual_gap_W_m2K};
}
inline SteelCasement steel_in_sub_frame() {
  return {.sub_frame = TimberSubFrame{}};
}

struct NamedSection {
  std::string name;
  ReadySection ready;
};

/// Every member with every place that it offers.
inline std::vector<NamedSection> usual_sections() {
  const MasonryReveal reveal;
  return {
      {"sash, sheet on sash", {.member = TimberSash{}, .sheet = usual_sheet()}},
      {"sash in masonry, sheet on sash", {.member = TimberSash{}, .reveal = reveal, .sheet = usual_sheet()}},
      {"sash, sheet in reveal", {.member = TimberSash{}, .reveal = reveal, .sheet = usual_sheet(OnBatten{})}},
      {"sash in frame, sheet on sash", {.member = SashInFrame{}, .sheet = usual_sheet()}},
      {"sash in frame, sheet on frame", {.member = SashInFrame{}, .sheet = usual_sheet(OnFrame{})}},
      {"sash in frame, sheet in reveal",
       {.member = SashInFrame{}, .reveal = reveal, .sheet = usual_sheet(OnBatten{})}},
      {"steel, sheet on steel", {.member = SteelCasement{}, .sheet = usual_sheet()}},
      {"steel, sheet in reveal",
       {.member = SteelCasement{}, .reveal = reveal, .sheet = usual_sheet(OnBatten{})}},
      {"steel in sub-frame, sheet on steel", {.member = steel_in_sub_frame(), .sheet = usual_sheet()}},
      {"steel in sub-frame, sheet on sub-frame",
       {.member = steel_in_sub_frame(), .sheet = usual_sheet(OnFrame{})}},
      {"steel in sub-frame, sheet in reveal",
       {.member = steel_in_sub_frame(), .reveal = reveal, .sheet = usual_sheet(OnBatten{})}}};
}

/// Sizes from the whole of ready_range, to a tenth of a millimetre; those that contradict each other are
/// drawn again.
class RandomReadySections {
 public:
  explicit RandomReadySections(std::uint64_t seed) : words_(seed) {}

  ReadySection next() {
    for (;;) {
      ++tries;
      const ReadySection ready = any();
      try {
        section_of(ready, ReadyFilling::glass_and_sheet);
        return ready;
      } catch (const InvalidInput&) {
        continue;
      }
    }
  }

  int tries = 0;

 private:
  double size(PermittedRange range) {
    const double low = range.min > 0.0 ? range.min : 0.001;
    return 1e-4 * std::round(1e4 * low * std::pow(range.max / low, words_.inside_unit_interval()));
  }
  double size_or_none(PermittedRange range) { return one_of(4) == 0 ? 0.0 : size(range); }
  std::uint64_t one_of(std::uint64_t count) { return words_.next() % count; }

  TimberSash sash() {
    using namespace ready_range;
    return {.depth_m = size(timber_depth_m),
            .face_m = size(timber_face_m),
            .rebate_m = size(rebate_m),
            .bedding_m = size(bedding_m),
            .glass_to_room_face_m = size(glass_to_room_face_m)};
  }
  SteelCasement steel() {
    using namespace ready_range;
    SteelCasement steel{.depth_m = size(steel_depth_m),
                        .upper_leg_m = size(steel_leg_m),
                        .lower_leg_m = size(steel_leg_m),
                        .thickness_m = size(steel_thickness_m),
                        .bedding_m = size(bedding_m)};
    if (one_of(2) == 0) {
      steel.sub_frame = TimberSubFrame{size(timber_depth_m), size(timber_face_m), size_or_none(set_back_m)};
    }
    return steel;
  }
  ReadyMember member() {
    using namespace ready_range;
    switch (one_of(3)) {
      case 0:
        return sash();
      case 1:
        return SashInFrame{.sash = sash(),
                           .frame_depth_m = size(timber_depth_m),
                           .frame_face_m = size(timber_face_m),
                           .joint_m = size(joint_m),
                           .set_back_m = size_or_none(set_back_m),
                           .stop_height_m = size(stop_height_m)};
      default:
        return steel();
    }
  }
  SheetPlace place() {
    using namespace ready_range;
    switch (one_of(3)) {
      case 0:
        return OnSash{};
      case 1:
        return OnFrame{};
      default:
        return OnBatten{size(batten_m), size(batten_m), size(glass_to_fixing_face_m)};
    }
  }
  ReadySection any() {
    using namespace ready_range;
    ReadySection ready{.member = member(), .glass = {.thickness_m = size(glass_thickness_m)}};
    ready.glass.visible_m = size(visible_glass_m);
    if (one_of(2) == 0) {
      ready.reveal = MasonryReveal{size_or_none(outer_reveal_m), size(inner_reveal_m), size(plaster_m)};
    }
    ReadySheet sheet = usual_sheet(place());
    sheet.thickness_m = std::max(1e-4, size(sheet_thickness_m));
    sheet.tape_thickness_m = size(tape_thickness_m);
    sheet.tape_width_m = size(tape_width_m);
    sheet.overlap_m = size(overlap_m);
    sheet.cut = one_of(3) == 0 ? TapeCut::vent_break : TapeCut::unbroken;
    ready.sheet = sheet;
    return ready;
  }

  numerics::SplitMix64 words_;
};

}  // namespace dewgap::test
