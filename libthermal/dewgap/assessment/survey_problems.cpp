#include <algorithm>
#include <cmath>
#include <numeric>

#include "dewgap/assessment/edge_of_window.hpp"
#include "dewgap/assessment/edge_section_kernel.hpp"
#include "dewgap/errors.hpp"

namespace dewgap {
namespace {

/// Collects violations instead of stopping at the first.
class Findings {
 public:
  void range(const std::string& field, double value, PermittedRange permitted, const std::string& unit) {
    try {
      require_in_range(value, permitted, field, unit);
    } catch (const InvalidInput& error) {
      found_.push_back({field, error.what()});
    }
  }
  void range(const std::string& field, const std::optional<double>& value, PermittedRange permitted,
             const std::string& unit) {
    if (value) {
      range(field, *value, permitted, unit);
    }
  }
  void when(bool contradiction, const std::string& field, const std::string& message) {
    if (contradiction) {
      found_.push_back({field, message});
    }
  }
  void add(const std::vector<SurveyProblem>& more) { found_.insert(found_.end(), more.begin(), more.end()); }
  std::vector<SurveyProblem> all() const { return found_; }

 private:
  std::vector<SurveyProblem> found_;
};

template <class Values>
double spread_of(const Values& values) {
  const auto [low, high] = std::minmax_element(values.begin(), values.end());
  return *high - *low;
}

template <class Values>
double mean_of(const Values& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

/// A quadrilateral near a rectangle has diagonals near sqrt(w2 + h2); further off, a figure was misread.
void check_diagonals(const WindowSurvey& window, Findings& find) {
  if (!window.diagonals_m) {
    return;
  }
  const double expected = std::hypot(mean_of(window.opening_widths_m), mean_of(window.opening_heights_m));
  for (const double diagonal : *window.diagonals_m) {
    find.range("window.diagonals", diagonal, {0.1, 6.0}, "m");
    find.when(std::abs(diagonal - expected) > 0.05 * expected, "window.diagonals",
              "a diagonal does not belong to an opening of these widths and heights (more than 5 % off)");
  }
}

void check_glass(const WindowSurvey& window, Findings& find) {
  find.range("window.glass_width", window.glass_width_m, {0.02, 4.0}, "m");
  find.range("window.glass_height", window.glass_height_m, {0.05, 4.0}, "m");
  find.range("window.panes", window.pane_count, {1.0, 200.0}, "");
  const double opening_m2 = mean_of(window.opening_widths_m) * mean_of(window.opening_heights_m);
  if (window.glass_width_m && window.glass_height_m) {
    const double glass_m2 = *window.glass_width_m * *window.glass_height_m * window.pane_count;
    find.when(glass_m2 > opening_m2, "window.glass_width", "the panes together are larger than the opening");
  }
  find.when(window.glass_width_m && *window.glass_width_m > mean_of(window.opening_widths_m),
            "window.glass_width", "the glass is wider than the opening");
  find.when(window.glass_height_m && *window.glass_height_m > mean_of(window.opening_heights_m),
            "window.glass_height", "the glass is higher than the opening");
}

/// A sash that moves as its kind does not, or depths between sashes that there are not.
void check_moves(const WindowSurvey& window, Findings& find) {
  const bool slides = window.kind == WindowKind::sliding_sash;
  if (window.moves) {
    const bool moves_by_sliding =
        *window.moves == SashMoves::up_and_down || *window.moves == SashMoves::sideways;
    find.when(window.kind == WindowKind::fixed_light, "window.moves", "a fixed light does not move");
    find.when(slides && !moves_by_sliding, "window.moves",
              "a sliding sash moves up and down or sideways, it does not swing");
    find.when(window.kind == WindowKind::casement && moves_by_sliding, "window.moves",
              "a casement swings inwards or outwards, it does not slide");
  }
  find.when(window.between_sashes_m && !slides, "window.between_sashes",
            "only a sliding sash has two sashes that pass each other");
}

/// What stands out of the fixing face or hangs before it.
void check_parts(const WindowSurvey& window, Findings& find) {
  find.range("window.catch_stands_out", window.catch_stands_out_m, {0.0, 0.2}, "m");
  find.range("window.handle_stands_out", window.handle_stands_out_m, {0.0, 0.2}, "m");
  find.range("window.stay_stands_out", window.stay_stands_out_m, {0.0, 0.2}, "m");
  find.range("window.between_sashes", window.between_sashes_m, {0.0, 0.2}, "m");
  find.range("window.shutter", window.shutter.clearance_m, {-0.2, 2.0}, "m");
  find.range("window.blind", window.blind.clearance_m, {-0.2, 2.0}, "m");
}

void check_window(const WindowSurvey& window, Findings& find) {
  for (const double width : window.opening_widths_m) {
    find.range("window.opening_widths", width, {0.1, 4.0}, "m");
  }
  for (const double height : window.opening_heights_m) {
    find.range("window.opening_heights", height, {0.1, 4.0}, "m");
  }
  find.when(spread_of(window.opening_widths_m) > 0.1, "window.opening_widths",
            "the three widths differ by over 100 mm");
  find.when(spread_of(window.opening_heights_m) > 0.1, "window.opening_heights",
            "the three heights differ by over 100 mm");
  check_diagonals(window, find);
  check_glass(window, find);
  find.range("window.glass_thickness", window.glass_thickness_m, {0.0015, 0.025}, "m");
  for (const double depth : window.glass_to_fixing_face_m) {
    find.range("window.glass_to_fixing_face", depth, {0.0, 0.24}, "m");
  }
  find.when(window.glass_to_fixing_face_m.size() > 2, "window.glass_to_fixing_face",
            "give one depth a sash, at most two");
  check_moves(window, find);
  check_parts(window, find);
  find.range("window.fixing_face", window.fixing_face_m, {0.005, 0.3}, "m");
  find.range("window.screw_depth", window.screw_depth_m, {0.0, 0.2}, "m");
  find.range("window.frame_thickness", window.frame_thickness_m, {0.005, 0.2}, "m");
  find.range("window.facing", window.facing_compass_deg, {0.0, 360.0}, "deg");
}

/// A rigid sheet thinner than 2 mm doesn't stay flat: our convention, no source.
void check_sheet_thickness(const SheetSurvey& sheet, Findings& find) {
  const bool film = sheet.material == SheetKind::pet_film;
  const PermittedRange permitted_m = film ? PermittedRange{0.00001, 0.0005} : PermittedRange{0.002, 0.012};
  const double thickness_m = sheet.thickness_m.value_or(permitted_m.min);
  const bool inside = thickness_m >= permitted_m.min && thickness_m <= permitted_m.max;
  find.when(!inside, "sheet.thickness",
            film ? "thickness of a film is out of range (permitted: 0.01 to 0.5 mm)"
                 : "thickness of a rigid sheet is out of range (permitted: 2 to 12 mm)");
}

void check_sheet(const Survey& survey, Findings& find) {
  const auto& sheet = survey.sheet;
  check_sheet_thickness(sheet, find);
  find.when(sheet.grade != SheetGrade::not_known && sheet.material != SheetKind::acrylic, "sheet.grade",
            "only acrylic is extruded or cast; leave it out for another material");
  if (sheet.stock) {
    find.range("sheet.stock", sheet.stock->width_m, {0.1, 50.0}, "m");
    find.range("sheet.stock", sheet.stock->height_m, {0.1, 50.0}, "m");
  }
  find.range("sheet.tape_thickness", sheet.tape_thickness_m, {0.0005, 0.03}, "m");
  find.range("sheet.tape_width", sheet.tape_width_m, {0.003, 0.06}, "m");
  find.range("sheet.curtain_gap", sheet.curtain_gap_m, {0.005, 0.25}, "m");
  find.when(sheet.material == SheetKind::pet_film && survey.expert.sheet_emissivity.value_or(0.0) > 0.80,
            "expert.sheet_emissivity", "a thin film also passes long-wave: its emissivity is at most 0.80");
  const auto& depths = survey.window.glass_to_fixing_face_m;
  const double tape_m = sheet.tape_thickness_m.value_or(0.006);
  const double gap_m = (depths.empty() ? 0.040 : mean_of(depths)) + tape_m;
  find.when(gap_m < 0.002 || gap_m > 0.25, "window.glass_to_fixing_face",
            "glass to fixing face and tape make a gap outside 2 to 250 mm");
}

void check_room(const Survey& survey, Findings& find) {
  find.range("room.temperature", survey.room.temperature_C, {10.0, 30.0}, "C");
  for (const auto& reading : survey.room.hygrometer) {
    find.range("room.hygrometer room temperature", reading.room_C, {0.0, 40.0}, "C");
    find.range("room.hygrometer humidity", reading.relative_humidity, {0.05, 1.0}, "(share)");
    find.range("room.hygrometer outdoor temperature", reading.outdoor_C, {-40.0, 40.0}, "C");
  }
  find.range("tissue.colder_outside", survey.tissue.colder_outside_K, {-40.0, 70.0}, "K");
}

void check_building(const Survey& survey, Findings& find) {
  const auto& building = survey.building;
  if (building.floor) {
    find.range("building.floor", *building.floor, {-2.0, 100.0}, "");
  }
  if (building.floors) {
    find.range("building.floors", *building.floors, {1.0, 100.0}, "");
  }
  find.when(building.floor && building.floors && *building.floor >= *building.floors, "building.floor",
            "the window's floor lies above the top floor (the ground floor is 0)");
  find.range("building.hours_heated", building.hours_heated, {0.0, 24.0}, "h");
  find.range("building.bill", building.bill_kWh, {0.0, 1e6}, "kWh");
}

void check_place(const PlaceSurvey& place, Findings& find) {
  constexpr std::size_t longest_name = 200;
  if (place.nearest.empty() || place.nearest.size() > longest_name) {
    find.when(true, "place.nearest", "a place name has 1 to 200 letters");
  } else if (find_place(place.nearest) == nullptr) {
    find.when(true, "place.nearest",
              "'" + place.nearest + "' is not a carried place; the nearest name is '" +
                  nearest_place_name(place.nearest) + "'");
  }
  find.range("place.distance", place.distance_km, {0.0, 5000.0}, "km");
  find.range("place.elevation", place.elevation_m, {-400.0, 5000.0}, "m");
}

void check_expert(const ExpertValues& expert, Findings& find) {
  find.range("expert.joint_leakage", expert.joint_leakage_m3_h_m, {0.0005, 50.0}, "m3/(h m)");
  find.range("expert.seal_leakage", expert.seal_leakage_m3_h_m, {0.00001, 50.0}, "m3/(h m)");
  find.range("expert.vapour_excess", expert.vapour_excess_Pa, {0.0, 3000.0}, "Pa");
  find.range("expert.room_humidity", expert.room_relative_humidity, {0.05, 0.95}, "(share)");
  find.range("expert.sheet_emissivity", expert.sheet_emissivity, {0.02, 0.99}, "");
  find.range("expert.sheet_conductivity", expert.sheet_conductivity_W_mK, {0.01, 400.0}, "W/(m K)");
  find.range("expert.base_temperature", expert.base_temperature_C, {0.0, 25.0}, "C");
  find.range("expert.mean_pressure", expert.mean_pressure_Pa, {-20.0, 20.0}, "Pa");
  find.range("expert.frame_u_value", expert.frame_u_value_W_m2K, {0.3, 10.0}, "W/(m2 K)");
}

/// Sizes here are in the table's ranges; whether they can be drawn together is asked when all else is right.
void check_edge(const Survey& survey, Findings& find) {
  const auto& edge = survey.edge;
  const bool has_sizes = edge.rail_face_m || edge.glass_to_room_face_m || edge.frame_face_m ||
                         edge.outer_reveal_m || edge.inner_reveal_m || edge.batten_depth_m;
  find.when(has_sizes && !edge.work_out, "edge.work_out",
            "sizes for the section are given, and nothing says whether it is to be worked out");
  find.range("edge.rail_face", edge.rail_face_m, edge_range::rail_face_m, "m");
  find.range("edge.glass_to_room_face", edge.glass_to_room_face_m, ready_range::glass_to_room_face_m, "m");
  find.range("edge.frame_face", edge.frame_face_m, ready_range::timber_face_m, "m");
  find.range("edge.outer_reveal", edge.outer_reveal_m, ready_range::outer_reveal_m, "m");
  find.range("edge.inner_reveal", edge.inner_reveal_m, ready_range::inner_reveal_m, "m");
  find.range("edge.batten_depth", edge.batten_depth_m, ready_range::batten_m, "m");
  if (find.all().empty() && edge.work_out.value_or(false)) {
    find.add(edge_problems(survey));
  }
}

void check_money(const MoneyTerms& money, Findings& find) {
  find.range("money.price_per_kWh", money.price_per_kWh, {0.0, 1e6}, "a kWh");
  find.range("money.efficiency", money.system_efficiency, {0.3, 6.0}, "");
  find.range("money.carbon", money.carbon_kg_per_kWh, {0.0, 5.0}, "kg/kWh");
  find.range("money.cost", money.cost, {0.0, 1e9}, "");
  find.range("money.life", money.life_years, {1.0, 60.0}, "years");
  find.range("money.discount_rate", money.discount_rate, {-0.05, 0.5}, "a year");
  find.range("money.price_rise", money.price_rise, {-0.1, 0.3}, "a year");
}

}  // namespace

std::vector<SurveyProblem> problems(const Survey& survey) {
  Findings find;
  check_place(survey.place, find);
  check_window(survey.window, find);
  check_sheet(survey, find);
  check_room(survey, find);
  check_building(survey, find);
  check_expert(survey.expert, find);
  if (survey.money) {
    check_money(*survey.money, find);
  }
  check_edge(survey, find);
  return find.all();
}

void validate(const Survey& survey) {
  const auto found = problems(survey);
  if (!found.empty()) {
    throw InvalidInput(found.front().field, found.front().message);
  }
}

}  // namespace dewgap
