#include "kinsol_plain.hpp"

#include <kinsol/kinsol.h>
#include <nvector/nvector_serial.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include <algorithm>
#include <cmath>

#include "dewgap/air/constants.hpp"

namespace dewgap::bench {
namespace {

using constants::celsius_zero_K;
using constants::stefan_boltzmann_W_m2K4;

double black(double t) {
  return stefan_boltzmann_W_m2K4 * t * t * t * t;
}
double black_slope(double t) {
  return 4.0 * stefan_boltzmann_W_m2K4 * t * t * t;
}

struct Conductance {
  double value = 0.0;
  double over_outer = 0.0;
  double over_inner = 0.0;
};

double gap_conductance(const PlainStack& p, std::size_t i, double outer_K, double inner_K) {
  const auto& gap = p.stack.gaps[i];
  const double mean = 0.5 * (outer_K + inner_K);
  const auto gas = gas_properties_iso_15099(gap.gas, mean - celsius_zero_K);
  const double rayleigh = gap_rayleigh(gas, gap.width_m, inner_K - outer_K, mean);
  const auto nu = gap_nusselt(rayleigh, p.stack.height_m / gap.width_m, 90.0, p.stack.correlation);
  return gas.conductivity_W_mK * nu.nusselt / gap.width_m;
}

// With slopes: those of the gas over temperature by a central difference over 1 K (the fits are all but
// linear).
Conductance gap_conductance_slopes(const PlainStack& p, std::size_t i, double outer_K, double inner_K) {
  const auto& gap = p.stack.gaps[i];
  const double mean = 0.5 * (outer_K + inner_K);
  const double difference = inner_K - outer_K;
  const auto gas = gas_properties_iso_15099(gap.gas, mean - celsius_zero_K);
  const auto low = gas_properties_iso_15099(gap.gas, mean - celsius_zero_K - 1.0);
  const auto high = gas_properties_iso_15099(gap.gas, mean - celsius_zero_K + 1.0);
  const double rayleigh = gap_rayleigh(gas, gap.width_m, difference, mean);
  const auto nu = gap_nusselt(rayleigh, p.stack.height_m / gap.width_m, 90.0, p.stack.correlation);
  const double log_slope =
      -3.0 / mean + 0.5 * (high.specific_heat_J_kgK - low.specific_heat_J_kgK) / gas.specific_heat_J_kgK -
      0.5 * (high.viscosity_Pa_s - low.viscosity_Pa_s) / gas.viscosity_Pa_s -
      0.5 * (high.conductivity_W_mK - low.conductivity_W_mK) / gas.conductivity_W_mK;
  const double by_mean = 0.5 *
                         (0.5 * (high.conductivity_W_mK - low.conductivity_W_mK) * nu.nusselt +
                          gas.conductivity_W_mK * nu.slope * rayleigh * log_slope) /
                         gap.width_m;
  const double by_difference = gas.conductivity_W_mK * nu.slope * rayleigh / difference / gap.width_m;
  return {gas.conductivity_W_mK * nu.nusselt / gap.width_m, by_mean - by_difference, by_mean + by_difference};
}

struct Ends {
  double outdoors = 0.0;
  double room = 0.0;
};

Ends surroundings(const PlainStack& p) {
  const double sky = p.outdoors.sky_view_factor;
  return {sky * black(p.outdoors.sky_temperature_C + celsius_zero_K) +
              (1.0 - sky) * black(p.outdoors.ground_temperature_C + celsius_zero_K),
          black(p.room.radiant_temperature_C + celsius_zero_K)};
}

}  // namespace

std::vector<double> PlainStack::start(const std::vector<double>& face_temperature_K) const {
  auto u = face_temperature_K;
  for (const double t : face_temperature_K) {
    u.push_back(black(t));
  }
  return u;
}

void PlainStack::residual(const double* u, double* f) const {
  const std::size_t n = 2 * stack.layer_count;
  const double* const t = u;
  const double* const j = u + n;
  const auto ends = surroundings(*this);
  const auto irradiance = [&](std::size_t face) {
    return face == 0 ? ends.outdoors : face + 1 == n ? ends.room : j[face % 2 == 0 ? face - 1 : face + 1];
  };
  for (std::size_t face = 0; face < n; ++face) {
    const auto& layer = stack.layers[face / 2];
    const std::size_t behind = face % 2 == 0 ? face + 1 : face - 1;
    const double e = face % 2 == 0 ? layer.emissivity_outer : layer.emissivity_inner;
    const double tau = layer.long_wave_transmittance;
    f[n + face] =
        j[face] - e * black(t[face]) - (1.0 - e - tau) * irradiance(face) - tau * irradiance(behind);
    f[face] = layer.conductivity_W_mK / layer.thickness_m * (t[behind] - t[face]) + e * irradiance(face) -
              e * black(t[face]) + 0.5 * layer.absorbed_sun_W_m2;
  }
  for (std::size_t i = 0; i + 1 < stack.layer_count; ++i) {
    const double flux = gap_conductance(*this, i, t[2 * i + 1], t[2 * i + 2]) * (t[2 * i + 2] - t[2 * i + 1]);
    f[2 * i + 1] += flux;
    f[2 * i + 2] -= flux;
  }
  f[0] += outdoors.convection_W_m2K * (outdoors.air_temperature_C + celsius_zero_K - t[0]);
  const double surface_C = t[n - 1] - celsius_zero_K;
  f[n - 1] += room_side_film(surface_C, room.air_temperature_C, stack.height_m).convection_W_m2K *
              (room.air_temperature_C - surface_C);
}

void PlainStack::jacobian(const double* u, double* const* columns) const {
  const std::size_t n = 2 * stack.layer_count;
  const auto at = [columns](std::size_t row, std::size_t column) -> double& { return columns[column][row]; };
  for (std::size_t face = 0; face < n; ++face) {
    const auto& layer = stack.layers[face / 2];
    const std::size_t behind = face % 2 == 0 ? face + 1 : face - 1;
    const double e = face % 2 == 0 ? layer.emissivity_outer : layer.emissivity_inner;
    const double tau = layer.long_wave_transmittance;
    const double conductance = layer.conductivity_W_mK / layer.thickness_m;
    at(n + face, n + face) = 1.0;
    at(n + face, face) = -e * black_slope(u[face]);
    at(face, face) = -conductance - e * black_slope(u[face]);
    at(face, behind) = conductance;
    const auto facing = [](std::size_t one) { return one % 2 == 0 ? one - 1 : one + 1; };
    if (face != 0 && face + 1 != n) {
      at(n + face, n + facing(face)) -= 1.0 - e - tau;
      at(face, n + facing(face)) = e;
    }
    if (behind != 0 && behind + 1 != n) {
      at(n + face, n + facing(behind)) -= tau;
    }
  }
  for (std::size_t i = 0; i + 1 < stack.layer_count; ++i) {
    const std::size_t a = 2 * i + 1;
    const auto h = gap_conductance_slopes(*this, i, u[a], u[a + 1]);
    const double difference = u[a + 1] - u[a];
    at(a, a) += h.over_outer * difference - h.value;
    at(a, a + 1) += h.over_inner * difference + h.value;
    at(a + 1, a) -= h.over_outer * difference - h.value;
    at(a + 1, a + 1) -= h.over_inner * difference + h.value;
  }
  at(0, 0) -= outdoors.convection_W_m2K;
  const double surface_C = u[n - 1] - celsius_zero_K;
  const auto film = room_side_film(surface_C, room.air_temperature_C, stack.height_m);
  at(n - 1, n - 1) += film.slope_W_m2K2 * (room.air_temperature_C - surface_C) - film.convection_W_m2K;
}

struct KinsolPlain::Memory {
  const PlainStack* problem = nullptr;
  SUNContext context = nullptr;
  N_Vector state = nullptr;
  N_Vector ones = nullptr;
  SUNMatrix matrix = nullptr;
  SUNLinearSolver linear = nullptr;
  void* kinsol = nullptr;
};

namespace {

int plain_residual(N_Vector u, N_Vector f, void* user) {
  static_cast<const PlainStack*>(user)->residual(NV_DATA_S(u), NV_DATA_S(f));
  return 0;
}

int plain_jacobian(N_Vector u, N_Vector, SUNMatrix matrix, void* user, N_Vector, N_Vector) {
  static_cast<const PlainStack*>(user)->jacobian(NV_DATA_S(u), SM_COLS_D(matrix));
  return 0;
}

}  // namespace

KinsolPlain::KinsolPlain(const PlainStack& problem) : memory_(new Memory{&problem}) {
  auto& m = *memory_;
  const auto n = static_cast<sunindextype>(problem.size());
  SUNContext_Create(nullptr, &m.context);
  m.state = N_VNew_Serial(n, m.context);
  m.ones = N_VNew_Serial(n, m.context);
  N_VConst(1.0, m.ones);
  m.matrix = SUNDenseMatrix(n, n, m.context);
  m.linear = SUNLinSol_Dense(m.state, m.matrix, m.context);
  m.kinsol = KINCreate(m.context);
  KINInit(m.kinsol, plain_residual, m.state);
  KINSetUserData(m.kinsol, const_cast<PlainStack*>(&problem));
  KINSetLinearSolver(m.kinsol, m.linear, m.matrix);
  KINSetJacFn(m.kinsol, plain_jacobian);
  KINSetMaxSetupCalls(m.kinsol, 1);
  KINSetScaledStepTol(m.kinsol, 1e-15);
}

KinsolPlain::~KinsolPlain() {
  auto& m = *memory_;
  KINFree(&m.kinsol);
  SUNLinSolFree(m.linear);
  SUNMatDestroy(m.matrix);
  N_VDestroy(m.state);
  N_VDestroy(m.ones);
  SUNContext_Free(&m.context);
  delete memory_;
}

PlainAnswer KinsolPlain::solve(const std::vector<double>& start, double tolerance_W_m2) {
  auto& m = *memory_;
  std::copy(start.begin(), start.end(), NV_DATA_S(m.state));
  KINSetFuncNormTol(m.kinsol, tolerance_W_m2);
  PlainAnswer answer;
  answer.flag = KINSol(m.kinsol, m.state, KIN_NONE, m.ones, m.ones);
  answer.face_temperature_K.assign(NV_DATA_S(m.state), NV_DATA_S(m.state) + start.size() / 2);
  KINGetNumNonlinSolvIters(m.kinsol, &answer.iterations);
  return answer;
}

}  // namespace dewgap::bench
