// What a person at the window saw and measured. std::nullopt is 'not known', legal everywhere but in the
// gates.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "dewgap/airflow/openings.hpp"
#include "dewgap/climate/places.hpp"
#include "dewgap/dwelling/pressure.hpp"
#include "dewgap/dwelling/room_humidity.hpp"
#include "dewgap/energy/money.hpp"
#include "dewgap/fitting/fit_check.hpp"
#include "dewgap/fitting/sheet_plan.hpp"
#include "dewgap/fitting/sun_heat.hpp"
#include "dewgap/materials/materials.hpp"
#include "dewgap/window/cover.hpp"

namespace dewgap {

// ---- settle first
// -------------------------------------------------------------------------------------------------

enum class WayOut { not_a_way_out, might_be_needed };
enum class Burning {
  nothing,
  balanced_flue,
  open_fire,
  flued_gas_fire,
  stove,
  boiler_in_room,
  flueless_heater
};
enum class FreshAir { other_way_to_breathe, only_this_window };
enum class Protection { unprotected, consent_given, consent_pending, consent_not_sought };
enum class OldGlassKind { plain, leaded_painted_or_historic };

/// The safety questions. Not answered (nullopt) is HOLD, as is every unsafe answer.
struct SettleFirst {
  std::string answered_by;
  std::optional<WayOut> way_out;
  std::optional<Burning> burning;
  std::optional<FreshAir> fresh_air;
  std::optional<Protection> protection;
  std::optional<OldGlassKind> old_glass;
};

// ---- the window
// ---------------------------------------------------------------------------------------------------

enum class WindowKind { sliding_sash, casement, fixed_light };
/// How its sash moves: a sliding one up and down or sideways, a casement inwards or outwards.
enum class SashMoves { up_and_down, sideways, inwards, outwards };

struct WindowSurvey {
  WindowKind kind = WindowKind::casement;
  FrameKind frame = FrameKind::softwood;
  std::array<double, 3> opening_widths_m{};   ///< top, middle, bottom
  std::array<double, 3> opening_heights_m{};  ///< left, middle, right
  std::optional<std::array<double, 2>> diagonals_m;
  std::optional<double> glass_width_m;  ///< visible, one pane
  std::optional<double> glass_height_m;
  int pane_count = 1;
  std::optional<double> glass_thickness_m;
  std::optional<bool> glass_coated;            ///< torch reflection of another colour
  std::vector<double> glass_to_fixing_face_m;  ///< one per sash; a sliding sash has two
  std::optional<SashMoves> moves;              ///< not for a fixed light
  std::optional<double> catch_stands_out_m;    ///< past the fixing face
  std::optional<double> handle_stands_out_m;   ///< the same
  std::optional<double> stay_stands_out_m;     ///< the same
  std::optional<double> between_sashes_m;      ///< free depth between the two sashes of a sliding window
  HungPart shutter;                            ///< inside, on the room's side
  HungPart blind;
  std::optional<double> fixing_face_m;
  std::optional<double> screw_depth_m;
  std::optional<double> frame_thickness_m;
  std::optional<double> facing_compass_deg;
  bool painted_shut = false;
  std::optional<bool> before_1980;
  std::optional<bool> low_or_beside_door;  ///< impact caution
};

struct SheetSurvey {
  SheetKind material = SheetKind::acrylic;
  SheetGrade grade = SheetGrade::not_known;  ///< of acrylic alone
  std::optional<double> thickness_m;
  std::optional<StockSize> stock;  ///< largest sheet that the supplier has
  Cover cover = Cover::frame;
  std::optional<double> tape_thickness_m;
  std::optional<double> tape_width_m;
  std::optional<TapeKind> tape;
  std::optional<bool> tape_unbroken;    ///< corners joined, all clips down, no light through
  std::optional<double> curtain_gap_m;  ///< a lined curtain drawn at night, this far from the sheet
};

// ---- observations
// -------------------------------------------------------------------------------------------------

enum class PaperPull { pulls_free, drags, tears };
struct JointSurvey {
  std::vector<Feeler> feelers;  ///< thickest thing that slides in, at the marked points
  std::optional<bool> rattles;
  std::optional<bool> daylight_at_meeting_rail;
  std::optional<bool> curtain_moves;
  std::optional<PaperPull> paper;
  std::optional<bool> weather_stripped;
};

enum class TissueWay { in, out, hangs, both_ways };
enum class WindToday { calm, breeze, windy };
struct TissueTest {
  std::optional<TissueWay> bottom;
  std::optional<TissueWay> meeting_rail;
  std::optional<TissueWay> top;
  std::optional<double> colder_outside_K;  ///< under 10 K the test is recorded but not used
  std::optional<WindToday> wind;
  std::optional<bool> extract_on;
};

enum class CentreMists { never, hard_frost_only, frosty_mornings, cool_days, mild_nights };
enum class RoomUse { living, bedroom, kitchen, bathroom, hall, other };
struct HygrometerReading {
  double room_C = 0.0;
  double relative_humidity = 0.0;  ///< 0..1
  double outdoor_C = 0.0;
  bool operator==(const HygrometerReading&) const = default;
};
struct RoomSurvey {
  std::optional<RoomUse> use;
  std::optional<double> temperature_C;
  std::optional<CentreMists> centre_mists;
  std::optional<bool> washing_dried;
  std::optional<bool> extract_fan;
  std::vector<HygrometerReading> hygrometer;
  bool operator==(const RoomSurvey&) const = default;
};

enum class TimberFeel { firm, soft, wet_now };
struct TimberSurvey {
  std::optional<TimberFeel> bottom_rail;
  std::optional<bool> lets_rain_in;
  std::optional<bool> water_pools;
};

struct BuildingSurvey {
  std::optional<int> floor;  ///< 0 is the ground floor
  std::optional<int> floors;
  std::optional<bool> open_stairwell;  ///< joins the floors
  std::optional<bool> working_chimney;
  std::optional<Shelter> outlook;
  std::optional<double> hours_heated;  ///< a day
  std::optional<double> bill_kWh;      ///< of heat and fuel a year: caps the saving
};

/// Coefficients that an expert gives; each wins over what observations imply.
struct ExpertValues {
  std::optional<double> joint_leakage_m3_h_m;  ///< at 1 Pa per metre of joint
  std::optional<double> seal_leakage_m3_h_m;
  std::optional<double> vapour_excess_Pa;        ///< at 0 C outdoors
  std::optional<double> room_relative_humidity;  ///< constant through winter
  std::optional<double> sheet_emissivity;
  std::optional<double> sheet_conductivity_W_mK;
  std::optional<double> base_temperature_C;
  std::optional<double> mean_pressure_Pa;  ///< p_room - p_outdoor
  std::optional<double> frame_u_value_W_m2K;
};

/// The bottom of the window drawn in section (edge_of_window.hpp), where that is asked for. Sizes that are
/// not known are usual ones.
struct EdgeSurvey {
  std::optional<bool> work_out;                ///< not drawn unless yes
  std::optional<double> rail_face_m;           ///< bottom rail or steel bar, foot to sight line
  std::optional<double> glass_to_room_face_m;  ///< of the bottom rail
  std::optional<bool> timber_sub_frame;        ///< steel: screwed to timber
  std::optional<double> frame_face_m;          ///< height of the fixed frame or sub-frame below that
  std::optional<double> outer_reveal_m;        ///< wall's outdoor face to the frame's
  std::optional<double> inner_reveal_m;        ///< frame's room face to the wall's
  std::optional<double> batten_depth_m;        ///< of a sheet in the reveal
};

struct PlaceSurvey {
  std::string nearest;  ///< key or name of a carried place
  std::optional<double> distance_km;
  std::optional<double> elevation_m;
};

/// Everything about one window.
struct Survey {
  std::string name;
  std::string note;
  PlaceSurvey place;
  SettleFirst settle_first;
  WindowSurvey window;
  SheetSurvey sheet;
  JointSurvey joints;
  TissueTest tissue;
  RoomSurvey room;
  TimberSurvey timber;
  BuildingSurvey building;
  ExpertValues expert;
  EdgeSurvey edge;
  std::optional<MoneyTerms> money;  ///< without it the answer stops at kWh
};

/// Throws InvalidInput for a value outside its range or for contradictory geometry. All violations: see
/// problems().
void validate(const Survey& survey);

/// Every violation of a survey, as field path and sentence; empty when valid.
struct SurveyProblem {
  std::string field;  ///< path as in the job file's sections: "window.opening_widths"
  std::string message;
};
std::vector<SurveyProblem> problems(const Survey& survey);

}  // namespace dewgap
