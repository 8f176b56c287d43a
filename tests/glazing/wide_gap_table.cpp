// Wide gaps, 20 to 150 mm: what three published correlations say, side by side. The table is regression data,
// our own output: no measurement to hold it against was found. Set DEWGAP_WRITE_REGRESSION to write it anew.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <string>
#include <vector>

#include "dewgap/glazing/convection.hpp"
#include "dewgap/glazing/emissivity.hpp"
#include "support/reference.hpp"

namespace dewgap {
namespace {

constexpr double height_m = 1.2;
constexpr double mean_C = 10.0;
constexpr double difference_K = 10.0;
constexpr std::array correlations{GapCorrelation::wright, GapCorrelation::elsherbiny, GapCorrelation::en_673};
constexpr std::array widths_mm{20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0, 125.0, 150.0};

struct WideGapRow {
  double width_mm = 0.0;
  double rayleigh = 0.0;
  std::array<double, 3> nusselt{};
  std::array<double, 3> resistance_m2K_W{};
};

WideGapRow wide_gap_row(double width_mm) {
  WideGapRow row;
  row.width_mm = width_mm;
  const double width_m = width_mm / 1000.0;
  const auto gas = gas_properties_iso_15099({}, mean_C);
  row.rayleigh = gap_rayleigh(gas, width_m, difference_K, mean_C + 273.15);
  const double radiation =
      radiation_conductance_W_m2K(uncoated_glass_emissivity, uncoated_glass_emissivity, mean_C + 273.15);
  for (std::size_t i = 0; i < correlations.size(); ++i) {
    row.nusselt[i] = gap_nusselt(row.rayleigh, height_m / width_m, 90.0, correlations[i]).nusselt;
    row.resistance_m2K_W[i] = 1.0 / (row.nusselt[i] * gas.conductivity_W_mK / width_m + radiation);
  }
  return row;
}

double spread_percent(const std::array<double, 3>& values) {
  const auto [low, high] = std::minmax_element(values.begin(), values.end());
  return 100.0 * (*high / *low - 1.0);
}

std::string printed(int decimals, double value) {
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "%.*f", decimals, value);
  return text.data();
}

std::string csv_text(const std::vector<WideGapRow>& rows) {
  std::string text =
      "# Regression data, our own output: Nusselt number and resistance of vertical air gaps, uncoated "
      "glass, height 1.2 m,\n"
      "# mean 10 C, 10 K between the faces, by three correlations. Written by "
      "tests/glazing/wide_gap_table.cpp.\n"
      "width_mm,rayleigh,nu_wright,nu_elsherbiny,nu_en_673,r_wright_m2K_W,r_elsherbiny_m2K_W,r_en_673_m2K_"
      "W\n";
  for (const auto& row : rows) {
    text += printed(0, row.width_mm) + "," + printed(1, row.rayleigh);
    for (const double nusselt : row.nusselt) {
      text += "," + printed(6, nusselt);
    }
    for (const double resistance : row.resistance_m2K_W) {
      text += "," + printed(6, resistance);
    }
    text += "\n";
  }
  return text;
}

std::string markdown_text(const std::vector<WideGapRow>& rows) {
  std::string text =
      "| gap mm | Nu Wright | Nu ElSherbiny | Nu EN 673 | spread % | R Wright | R ElSherbiny | R EN 673 | "
      "spread % |\n"
      "| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n";
  for (const auto& row : rows) {
    text += "| " + printed(0, row.width_mm);
    for (const double nusselt : row.nusselt) {
      text += " | " + printed(2, nusselt);
    }
    text += " | " + printed(0, spread_percent(row.nusselt));
    for (const double resistance : row.resistance_m2K_W) {
      text += " | " + printed(3, resistance);
    }
    text += " | " + printed(1, spread_percent(row.resistance_m2K_W)) + " |\n";
  }
  return text;
}

std::vector<WideGapRow> wide_gap_rows() {
  std::vector<WideGapRow> rows;
  for (const double width_mm : widths_mm) {
    rows.push_back(wide_gap_row(width_mm));
  }
  return rows;
}

TEST(WideGaps, TableIsAsItWas) {
  const auto rows = wide_gap_rows();
  if (const char* folder = std::getenv("DEWGAP_WRITE_REGRESSION")) {
    std::ofstream(std::string(folder) + "/wide_gaps.csv") << csv_text(rows);
    std::ofstream(std::string(folder) + "/wide_gaps.md") << markdown_text(rows);
  }
  const auto table = test::read_test_table("glazing/regression/wide_gaps.csv");
  ASSERT_EQ(table.row_count(), rows.size());
  const std::array<const char*, 3> names{"wright", "elsherbiny", "en_673"};
  for (std::size_t i = 0; i < rows.size(); ++i) {
    EXPECT_EQ(table.number(i, "width_mm"), rows[i].width_mm);
    for (std::size_t c = 0; c < names.size(); ++c) {
      EXPECT_NEAR(table.number(i, std::string("nu_") + names[c]), rows[i].nusselt[c], 1e-6);
      EXPECT_NEAR(table.number(i, std::string("r_") + names[c] + "_m2K_W"), rows[i].resistance_m2K_W[c],
                  1e-6);
    }
  }
  std::fputs(markdown_text(rows).c_str(), stdout);
}

TEST(WideGaps, CorrelationsDifferByAsMuchAsTheDocumentsSay) {
  double worst_nusselt = 0.0;
  double worst_resistance = 0.0;
  for (const auto& row : wide_gap_rows()) {
    if (row.width_mm >= 50.0) {
      worst_nusselt = std::max(worst_nusselt, spread_percent(row.nusselt));
      worst_resistance = std::max(worst_resistance, spread_percent(row.resistance_m2K_W));
    }
  }
  EXPECT_GT(worst_nusselt, 10.0);
  std::printf("50 to 150 mm: Nu within %.1f %%, resistance within %.1f %%\n", worst_nusselt,
              worst_resistance);
}

}  // namespace
}  // namespace dewgap
