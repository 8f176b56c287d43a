#include "calibration/report.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "dewgap/assessment/vent_choice_kernel.hpp"

namespace dewgap::calibration {
namespace {

constexpr std::array<const char*, every_vent_option.size()> short_names{
    "sealed", "2x20 low", "2x100 low", "low+top", "weep", "stripped", "off summer"};

void print_bins(const StageSummary& summary) {
  for (std::size_t b = 0; b < 10; ++b) {
    std::printf("  %3zu-%3zu %%", 10 * b, 10 * b + 10);
    const auto cell = [b](const Reliability& found) {
      const auto& bin = found.bins.at(b);
      if (bin.count == 0) {
        std::printf(" %17s", "-");
      } else if (!bin.has_deviation) {
        std::printf("   %+5.1f %5s %4zu", 100.0 * (bin.seen - bin.claimed), "", bin.count);
      } else {
        std::printf("   %+5.1f+-%4.1f%4zu%c", 100.0 * (bin.seen - bin.claimed), 100.0 * bin.sampling,
                    bin.count, std::abs(bin.deviation) > most_deviation ? '*' : ' ');
      }
    };
    std::for_each(summary.options.begin(), summary.options.end(), cell);
    cell(summary.chosen);
    std::puts("");
  }
}

template <class Figure>
void print_row(const char* name, const StageSummary& summary, int decimals, Figure figure) {
  std::printf("  %-9s", name);
  for (const auto& found : summary.options) {
    std::printf(" %17.*f", decimals, figure(found));
  }
  std::printf(" %17.*f\n", decimals, figure(summary.chosen));
}

void print_figures(const StageSummary& summary) {
  print_row("chi-sq.", summary, 1, [](const Reliability& r) { return r.chi_square; });
  print_row("groups", summary, 0, [](const Reliability& r) { return static_cast<double>(r.groups); });
  print_row("by chance", summary, 4, [](const Reliability& r) { return r.probability; });
  print_row("largest", summary, 1, [](const Reliability& r) { return r.largest_deviation; });
  print_row("bias", summary, 1, [](const Reliability& r) { return 100.0 * r.bias; });
  print_row("Brier", summary, 4, [](const Reliability& r) { return r.brier; });
  print_row("of base", summary, 4, [](const Reliability& r) { return r.brier_of_base; });
}

void print_stage(const Judged& judged, Stage stage) {
  const auto summary = summary_of(judged, Weighing::stated, stage);
  std::printf("\n%s: %zu of %zu windows settled, median of %.0f effective cases\n",
              std::string(name_of(stage)).c_str(), summary.settled, summary.windows,
              summary.median_effective);
  std::printf("  %-9s", "claimed");
  for (const auto* name : short_names) {
    std::printf(" %17s", name);
  }
  std::printf(" %17s\n", "the chosen one");
  print_bins(summary);
  print_figures(summary);
  std::puts("  with the chances that the answers were drawn with instead of the stated likelihoods:");
  const auto ideal = summary_of(judged, Weighing::chance, stage);
  std::printf("  (%zu settled, median of %.0f effective cases)\n", ideal.settled, ideal.median_effective);
  print_figures(ideal);
}

}  // namespace

void print_bank(const std::vector<BankPart>& bank) {
  std::puts("Simulated windows: share that is acceptable (dry or harmless mist) over the year, %");
  std::printf("  %-26s %8s %8s", "", "windows", "left out");
  for (const auto* name : short_names) {
    std::printf(" %10s", name);
  }
  std::puts("");
  for (const auto& part : bank) {
    const std::vector<double> equal(part.years.size(), 1.0);
    const auto choice = choose(part.years, equal, part.scene->options);
    std::printf("  %-26s %8zu %8zu", part.scene->archetype.name.c_str(), part.years.size(), part.left_out);
    for (const auto option : every_vent_option) {
      const auto& offered = part.scene->options;
      const auto place = std::find(offered.begin(), offered.end(), option);
      if (place == offered.end()) {
        std::printf(" %10s", "-");
      } else {
        std::printf(" %10.1f",
                    100.0 * choice.acceptable_share.at(static_cast<std::size_t>(place - offered.begin())));
      }
    }
    std::puts("");
  }
}

void print_astray(const BankPart& part, const std::vector<AskedQuestion>& asked) {
  std::printf("\nHow far the stated likelihoods lead astray among plausible windows, e-folds: %s\n",
              part.scene->archetype.name.c_str());
  for (const auto& one : asked) {
    if (one.question.occasion == 0) {
      std::printf("  %-30s %6.2f\n", one.question.name.c_str(), astray(one));
    }
  }
}

void print_kind(const BankPart& part, const Judged& judged) {
  std::printf("What came true less what was claimed of the chosen option, points: %s\n",
              part.scene->archetype.name.c_str());
  for (const auto stage : all_stages) {
    const auto stated = summary_of(judged, Weighing::stated, stage).chosen;
    const auto chance = summary_of(judged, Weighing::chance, stage).chosen;
    std::printf("  %-26s stated %+6.1f +-%4.1f  chance %+6.1f +-%4.1f\n", std::string(name_of(stage)).c_str(),
                100.0 * stated.bias, 100.0 * stated.bias_sampling, 100.0 * chance.bias,
                100.0 * chance.bias_sampling);
  }
}

void print_reliability(const Judged& judged) {
  std::puts(
      "\nReliability: what came true less what was claimed, in points, +- its binomial sampling error, and");
  std::puts(
      "the number of claims. * beyond 3.3 sampling errors. 'by chance': probability of so large a "
      "chi-square.");
  for (const auto stage : all_stages) {
    print_stage(judged, stage);
  }
}

void print_summary(const Judged& judged, Hearing hearing) {
  std::printf("\n%s\n", hearing == Hearing::all_so_far ? "Summary, all observations so far"
                                                       : "Summary, each stage's observations alone");
  std::printf("%-26s %-9s %8s %9s %9s %8s %9s %8s %14s\n", "", "weighed by", "settled", "not, %", "effective",
              "largest", "holds", "Brier", "chosen");
  for (const auto stage : all_stages) {
    for (const auto weighing : all_weighings) {
      const auto summary = summary_of(judged, weighing, stage);
      const auto windows = static_cast<double>(summary.windows);
      std::printf("%-26s %-9s %8zu %9.1f %9.0f %8.1f %9s %8.4f %+8.1f +-%4.1f\n",
                  weighing == Weighing::stated ? std::string(name_of(stage)).c_str() : "",
                  weighing == Weighing::stated ? "stated" : "chance", summary.settled,
                  100.0 * (1.0 - static_cast<double>(summary.settled) / windows), summary.median_effective,
                  summary.largest_deviation(), summary.holds() ? "yes" : "no", summary.brier,
                  100.0 * summary.chosen.bias, 100.0 * summary.chosen.bias_sampling);
    }
  }
  std::puts(
      "holds: every chi-square is one that chance gives once in a thousand times or oftener, and no bin");
  std::puts("is off by more than 3.3 sampling errors. chosen: what came true less what was claimed, points.");
}

void print_priors(const std::vector<BankPart>& bank, const std::vector<PriorEffect>& effects) {
  std::size_t least = bank.front().samples.size();
  for (const auto& part : bank) {
    least = std::min(least, part.samples.size());
  }
  std::printf(
      "\nSquared rank correlation of each unknown, mean of the %zu kinds of window; below %.3f may be "
      "chance\n",
      bank.size(), squared_correlation_by_chance(least));
  std::printf("  %-24s %12s %16s %8s %9s  %s\n", "", "hours wet", "wet with breaks", "heat", "largest", "of");
  for (const auto& effect : effects) {
    std::printf("  %-24s %12.3f %16.3f %8.3f %9.3f  %s%s\n", std::string(key_of(effect.unknown)).c_str(),
                effect.on_hours_wet, effect.on_hours_wet_with_breaks, effect.on_heat, effect.largest,
                bank[effect.part_of_largest].scene->archetype.name.c_str(),
                effect.varies ? "" : "  NEVER VARIES");
  }
}

}  // namespace dewgap::calibration
