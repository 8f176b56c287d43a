#include "dewgap/assessment/cautions_kernel.hpp"
#include "dewgap/assessment/edge_section_kernel.hpp"
#include "dewgap/errors.hpp"
#include "dewgap/numerics/csv_text.hpp"
#include "embedded/room_assessment.hpp"

namespace dewgap {
namespace {

bool is_plastic(SheetKind kind) {
  return kind != SheetKind::glass;
}

/// Whether clips or screws go into timber: not into metal or PVC-U, glazing bars, a reveal, nor for film.
bool takes_screws(const Survey& survey) {
  const bool on_a_face = survey.sheet.cover == Cover::frame || survey.sheet.cover == Cover::sash;
  return survey.sheet.material != SheetKind::pet_film && on_a_face && is_timber(survey.window.frame);
}

/// Whether beads round a reveal hold it.
bool takes_beads(const Survey& survey) {
  return survey.sheet.material != SheetKind::pet_film && survey.sheet.cover == Cover::reveal;
}

/// A sheet on the frame may stand on the timber round the steel: there it is said where it is drawn so.
bool leaves_steel_bare(const Survey& survey) {
  const bool is_sure = survey.sheet.cover != Cover::frame || survey.edge.work_out.value_or(false);
  return is_sure && sheet_on_steel(survey);
}

/// A caution whose tick is not known applies: unknown is not safe.
bool applies(std::string_view tick, const Survey& survey) {
  if (tick == "always") {
    return true;
  }
  if (tick == "held") {
    return !open_gates(survey.settle_first).empty();
  }
  if (tick == "answered") {
    return open_gates(survey.settle_first).empty();
  }
  if (tick == "protected") {
    return survey.settle_first.protection != Protection::unprotected;
  }
  if (tick == "low") {
    return survey.window.low_or_beside_door.value_or(true);
  }
  if (tick == "plastic") {
    return is_plastic(survey.sheet.material);
  }
  if (tick == "screws") {
    return takes_screws(survey);
  }
  if (tick == "beads") {
    return takes_beads(survey);
  }
  if (tick == "steel") {
    return open_gates(survey.settle_first).empty() && leaves_steel_bare(survey);
  }
  if (tick == "before_1980") {
    return survey.window.before_1980.value_or(true);
  }
  throw InvalidInput("cautions.csv", "unknown tick '" + std::string(tick) + "'");
}

}  // namespace

std::vector<Caution> cautions_for(const Survey& survey) {
  static const numerics::CsvTable table(embedded::cautions_csv, "cautions.csv");
  std::vector<Caution> chosen;
  for (std::size_t row = 0; row < table.row_count(); ++row) {
    if (applies(table.text(row, "applies"), survey)) {
      chosen.push_back({.topic = table.text(row, "topic"),
                        .brief = table.text(row, "brief"),
                        .say = table.text(row, "say"),
                        .source = table.text(row, "source")});
    }
  }
  return chosen;
}

}  // namespace dewgap
