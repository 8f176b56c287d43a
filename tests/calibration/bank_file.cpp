#include <fstream>
#include <span>
#include <stdexcept>
#include <string>
#include <type_traits>

#include "calibration/bank.hpp"

namespace dewgap::calibration {
namespace {

static_assert(std::is_trivially_copyable_v<SampleYear> && std::is_trivially_copyable_v<UnknownValues>);

/// Two plans with the same line have the same windows, but for changes of the library.
std::string title_of(const BankPlan& plan, const Scene& scene, std::uint64_t seed) {
  return "simulated windows, " + scene.archetype.name + ", " + std::to_string(plan.windows) + " from seed " +
         std::to_string(seed) + ", " + std::to_string(scene.year.outdoor_C.size()) + " h, " +
         std::to_string(sizeof(SampleYear)) + " and " + std::to_string(sizeof(UnknownValues)) + " bytes each";
}

template <class Value>
void write_values(std::ostream& out, std::span<const Value> values) {
  out.write(reinterpret_cast<const char*>(values.data()), static_cast<std::streamsize>(values.size_bytes()));
}

template <class Value>
std::vector<Value> read_values(std::istream& in, std::size_t count) {
  std::vector<Value> values(count);
  in.read(reinterpret_cast<char*>(values.data()), static_cast<std::streamsize>(count * sizeof(Value)));
  return values;
}

bool is_same(const OptionYear& a, const OptionYear& b) {
  return a.band == b.band && a.hours_wet == b.hours_wet && a.peak_film_g_m2 == b.peak_film_g_m2 &&
         a.peak_timber == b.peak_timber && a.heat_kWh == b.heat_kWh && a.drained_g_m2 == b.drained_g_m2;
}

bool still_holds(const BankPart& part, const BankPlan& plan, std::uint64_t seed) {
  const auto drawn = draw_samples(beliefs_for(part.scene->archetype.survey), plan.windows, seed, 1.0);
  if (part.samples.empty() || (part.left_out == 0 && part.samples.back().value != drawn.back().value)) {
    return false;
  }
  const auto now = run_sample_year(part.scene->year, part.samples.front());
  bool same = is_same(now.as_it_is, part.years.front().as_it_is);
  for (std::size_t j = 0; j < now.options.size(); ++j) {
    same = same && is_same(now.options[j], part.years.front().options[j]);
  }
  return same;
}

}  // namespace

std::optional<BankPart> saved_part(const std::filesystem::path& file,
                                   const std::shared_ptr<const Scene>& scene, const BankPlan& plan,
                                   std::uint64_t seed) {
  std::ifstream in(file, std::ios::binary);
  std::string title;
  if (!in || !std::getline(in, title) || title != title_of(plan, *scene, seed)) {
    return std::nullopt;
  }
  const auto count = read_values<std::size_t>(in, 1).front();
  if (!in || count > plan.windows) {
    return std::nullopt;
  }
  BankPart part{.scene = scene, .left_out = plan.windows - count};
  part.samples = read_values<UnknownValues>(in, count);
  part.years = read_values<SampleYear>(in, count);
  const bool usable = in && still_holds(part, plan, seed);
  return usable ? std::optional(std::move(part)) : std::nullopt;
}

void save_part(const std::filesystem::path& file, const BankPart& part, const BankPlan& plan,
               std::uint64_t seed) {
  std::ofstream out(file, std::ios::binary);
  out << title_of(plan, *part.scene, seed) << '\n';
  const std::size_t count = part.samples.size();
  write_values(out, std::span(&count, 1));
  write_values(out, std::span<const UnknownValues>(part.samples));
  write_values(out, std::span<const SampleYear>(part.years));
  if (!out.flush()) {
    throw std::runtime_error("cannot write " + file.string());
  }
}

}  // namespace dewgap::calibration
