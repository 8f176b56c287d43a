// Timber as source and store of moisture: what wood holds at a humidity, and a damp layer at a surface.
//
// Moisture content is kg water per kg oven-dry wood (0.12 is what the trade calls 12 %). Relative humidity is
// 0..1 over water, also below 0 C. NaN and values outside a stated range throw InvalidInput.
#pragma once

namespace dewgap {

/// Moisture content of wood in equilibrium with air, kg/kg: Hailwood-Horrobin, USDA Wood Handbook eq. 4-5
/// with its constants for degrees Celsius (from memory; the Handbook's table is met to 0.0005 kg/kg, its
/// half digit, but for 5 of 152 values, which lie under 0.0001 beyond). Temperature -30 to 80 C; the
/// Handbook's table begins at -1.1 C, below which the equation is continued: at -30 C it gives at most 0.0001
/// more and 0.021 less than at 0 C up to 90 % humidity, and 0.031 less at 100 %. Checked to 60 C. Relative
/// humidity 0 to 1; at 1 it gives fibre saturation, 0.24 to 0.29. Softwoods and hardwoods alike. Leaves out
/// hysteresis: wood that takes up moisture holds 0.8 to 0.85 of what drying wood holds (Wood Handbook, from
/// memory).
double wood_moisture_kg_kg(double temperature_C, double relative_humidity);

/// d(moisture content)/d(relative humidity), kg/kg, analytic, same ranges. Always above 0.02.
double wood_moisture_slope_kg_kg(double temperature_C, double relative_humidity);

/// Relative humidity at which wood neither takes up nor gives off vapour: the inverse of wood_moisture_kg_kg
/// to 1e-13. Wood wetter than fibre saturation holds free water and stands with saturated air: exactly 1.
/// Moisture content 0 to 2.5 kg/kg.
double wood_relative_humidity(double temperature_C, double moisture_kg_kg);

/// Above this moisture content wood can decay: Wood Handbook's caution, about 88 to 89 % humidity (from
/// memory).
inline constexpr double timber_caution_kg_kg = 0.20;

/// The outermost wood of frame or sash that exchanges vapour within hours to weeks. One node: its moisture is
/// uniform, and vapour passes half its thickness. Depth and coat are the user's choice; the deeper wood
/// behind, end grain, and water soaking in as a liquid are left out.
struct DampLayer {
  double area_m2 = 0.0;              ///< 0 to 100
  double thickness_m = 0.003;        ///< 1e-4 to 0.05; 1 to 5 mm for swings of days to weeks (our convention)
  double dry_density_kg_m3 = 450.0;  ///< oven dry, 100 to 1300; softwood 400 to 550 (handbooks, from memory)
  /// Against still air, 5 to 1000. EN ISO 10456, timber of 450 to 500 kg/m3: 50 dry, 20 wet; 700 kg/m3: 200
  /// dry, 50 wet (from memory).
  double vapour_resistance_factor = 30.0;
  double coat_equivalent_air_m = 0.0;  ///< s_d of paint or varnish, 0 to 100; 0 is bare wood
};

struct DampLayerConditions {
  double duration_s = 3600.0;         ///< 1 to 86400
  double temperature_C = 10.0;        ///< of the layer, -30 to 80
  double air_vapour_Pa = 0.0;         ///< 0 to 20000
  double transfer_kg_m2sPa = 2.1e-8;  ///< of the air film on vapour pressure, 0 to 2e-5
};

struct DampLayerStep {
  double moisture_kg_kg = 0.0;  ///< at the end
  double given_kg = 0.0;        ///< to the air over the step; negative when the layer takes vapour up
  double vapour_Pa = 0.0;       ///< at the end, in the middle of the layer
  double relative_humidity = 0.0;
  /// How much less the layer gives when the air is damper: -d(given / duration)/d(air_vapour_Pa), kg/(s Pa).
  double response_kg_sPa = 0.0;
};

/// One implicit (backward Euler) step under steady air, for hours. Moisture content before the step 0 to 2.5
/// kg/kg. Never negative, never past equilibrium, any duration; given_kg is dry mass times the fall in
/// moisture content, so that water is conserved to rounding. One step differs from many short ones by less
/// than a quarter of the distance to equilibrium, and by less the shorter the step: half in half the
/// duration. Vapour condensing on saturated wood stays in the layer as free water, without limit: a state
/// above 2.5 is refused by the next step.
DampLayerStep step_damp_layer(const DampLayer& layer, double moisture_kg_kg,
                              const DampLayerConditions& conditions);

/// Oven-dry mass of the layer, kg.
double dry_mass_kg(const DampLayer& layer);

}  // namespace dewgap
