// Radiation through films that transmit it, against closed forms.
#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "dewgap/glazing/long_wave_kernel.hpp"
#include "random_stacks.hpp"

namespace dewgap {
namespace {

using glazing_kernel::BlackEmission;
using glazing_kernel::FaceVector;
using glazing_kernel::LongWaveExchange;
using Layers = std::array<StackLayer, max_stack_layers>;

StackLayer layer(double outer, double inner, double transmittance) {
  StackLayer made;
  made.emissivity_outer = outer;
  made.emissivity_inner = inner;
  made.long_wave_transmittance = transmittance;
  return made;
}

// Two black walls with a film between them: what passes is (E1 - E2) tau, and with the film at radiative
// balance half of what it takes up besides: (E1 - E2) (tau + e/2).
TEST(LongWave, AFilmBetweenBlackWalls) {
  const double e = 0.55;
  const double tau = 0.30;
  const Layers layers{layer(1.0, 1.0, 0.0), layer(e, e, tau), layer(1.0, 1.0, 0.0)};
  const LongWaveExchange<3> exchange(layers, {300.0, 400.0});
  const double cold = 310.0;
  const double warm = 420.0;
  const double film = 0.5 * (cold + warm);
  const auto g = exchange.irradiance_W_m2({cold, cold, film, film, warm, warm});
  EXPECT_NEAR(g[1] - cold, (warm - cold) * (tau + 0.5 * e), 1e-10);
  EXPECT_NEAR(warm - g[4], (warm - cold) * (tau + 0.5 * e), 1e-10);
  EXPECT_NEAR(g[2], cold, 1e-12);
  EXPECT_NEAR(g[3], warm, 1e-12);
  EXPECT_EQ(g[0], 300.0);
  EXPECT_EQ(g[5], 400.0);
}

// Two grey walls see each other through a film of the same reflectance to both sides: series of the infinite
// reflections, worked by the resistance of each surface where the film passes everything it does not absorb.
TEST(LongWave, AFilmThatOnlyTransmitsAndAbsorbsBetweenGreyWalls) {
  const double e1 = 0.3;
  const double e2 = 0.8;
  const double tau = 0.4;  // emissivity 0.6, no reflectance
  const Layers layers{layer(0.9, e1, 0.0), layer(0.6, 0.6, tau), layer(e2, 0.9, 0.0)};
  const LongWaveExchange<3> exchange(layers, {0.0, 0.0});
  // Only wall 2 emits: its radiosity J2 = e2 E2 + (1 - e2) tau (1 - e1) tau J2 and wall 1 receives tau J2.
  const double emission = 500.0;
  const double j2 = e2 * emission / (1.0 - (1.0 - e2) * tau * (1.0 - e1) * tau);
  const auto g = exchange.irradiance_W_m2({0.0, 0.0, 0.0, 0.0, emission, 0.0});
  EXPECT_NEAR(g[1], tau * j2, 1e-10);
  EXPECT_NEAR(g[3], j2, 1e-10);
  EXPECT_NEAR(g[2], (1.0 - e1) * tau * j2, 1e-10);
}

TEST(LongWave, FilmsAtBothEndsLetTheSurroundingsThrough) {
  const Layers layers{layer(0.5, 0.5, 0.5), layer(0.4, 0.4, 0.6)};
  const LongWaveExchange<2> exchange(layers, {300.0, 450.0});
  const auto g = exchange.irradiance_W_m2({});
  EXPECT_NEAR(g[2], 0.5 * 300.0, 1e-12);
  EXPECT_NEAR(g[1], 0.6 * 450.0, 1e-12);
}

TEST(LongWave, TheTransmittingPathMeetsTheOpaqueOne) {
  test::Draw draw(7);
  for (int i = 0; i < 200; ++i) {
    Layers opaque{};
    for (auto& one : opaque) {
      one = layer(draw.between(0.02, 0.99), draw.between(0.02, 0.99), 0.0);
    }
    auto hardly = opaque;
    hardly[3].long_wave_transmittance = 1e-13;
    const LongWaveExchange<7> a(opaque, {300.0, 420.0});
    const LongWaveExchange<7> b(hardly, {300.0, 420.0});
    FaceVector<7> black{};
    for (auto& power : black) {
      power = draw.between(200.0, 500.0);
    }
    const auto g_a = a.irradiance_W_m2(black);
    const auto g_b = b.irradiance_W_m2(black);
    for (std::size_t f = 0; f < 14; ++f) {
      EXPECT_NEAR(g_a[f], g_b[f], 1e-9);
    }
  }
}

TEST(LongWave, NothingFlowsAtOneTemperature) {
  test::Draw draw(8);
  for (int i = 0; i < 200; ++i) {
    Layers layers{};
    for (auto& one : layers) {
      const double tau = draw.between(0.0, 0.9);
      one = layer(draw.between(0.01, 1.0 - tau), draw.between(0.01, 1.0 - tau), tau);
    }
    const LongWaveExchange<5> exchange(layers, {400.0, 400.0});
    FaceVector<5> black{};
    black.fill(400.0);
    for (const double irradiance : exchange.irradiance_W_m2(black)) {
      EXPECT_NEAR(irradiance, 400.0, 1e-9);
    }
  }
}

TEST(LongWave, EmissionLaws) {
  const auto real = BlackEmission::stefan_boltzmann();
  EXPECT_NEAR(real.power_W_m2(283.15), 5.670374419e-8 * std::pow(283.15, 4), 1e-10);
  EXPECT_NEAR(real.slope_W_m2K(283.15), 4.0 * real.power_W_m2(283.15) / 283.15, 1e-12);
  const auto linear = BlackEmission::linearised(283.15);
  EXPECT_NEAR(linear.slope_W_m2K(250.0), 4.0 * 5.67e-8 * std::pow(283.15, 3), 1e-12);
  EXPECT_NEAR(linear.power_W_m2(290.0) - linear.power_W_m2(280.0), 10.0 * linear.slope_W_m2K(283.15), 1e-9);
}

}  // namespace
}  // namespace dewgap
