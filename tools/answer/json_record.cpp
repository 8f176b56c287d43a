// The record that lets a run be repeated: what the files give, evidence, inputs with basis and source,
// influences, flags.
#include "dewgap/assessment/priors.hpp"
#include "tools/answer/json_parts_kernel.hpp"
#include "tools/answer/words.hpp"

namespace dewgap::tools::json_parts {

namespace {

Json scalar(const GivenScalar& value) {
  if (const auto* number = std::get_if<double>(&value)) return finite(*number);
  if (const auto* whole = std::get_if<std::int64_t>(&value)) return *whole;
  return std::get<std::string>(value);
}

Json value_of(const GivenValue& given) {
  if (const auto* one = std::get_if<GivenScalar>(&given.value)) return scalar(*one);
  Json list = Json::array();
  for (const auto& one : std::get<std::vector<GivenScalar>>(given.value)) list.push_back(scalar(one));
  return list;
}

}  // namespace

Json given(const std::vector<GivenValue>& values) {
  Json list = Json::array();
  for (const auto& value : values) {
    Json one{{"key", value.key}};
    if (value.reading) one["reading"] = *value.reading;
    one["value"] = value_of(value);
    one["unit"] = value.unit;
    one["basis"] = json_word(value.basis);
    list.push_back(one);
  }
  return list;
}

Json evidence(const std::vector<EvidenceUse>& uses) {
  Json list = Json::array();
  for (const auto& use : uses) {
    Json one{{"observation", use.observation},
             {"answer", use.answer},
             {"used", use.used},
             {"effective_share_of_samples", share(use.effective_share)}};
    if (!use.used) one["why_not"] = use.why_not;
    list.push_back(one);
  }
  return list;
}

Json inputs(const Assessment::Figures& figures) {
  Json list = Json::array();
  for (const auto& input : figures.inputs)
    list.push_back({{"key", input.key},
                    {"value", finite(input.value)},
                    {"unit", input.unit},
                    {"basis", json_word(input.basis)},
                    {"source", input.source}});
  return list;
}

Json influences(const Assessment::Figures& figures) {
  Json list = Json::array();
  for (const auto& one : figures.influences)
    list.push_back({{"unknown", key_of(one.unknown)},
                    {"label", one.label},
                    {"settle_by", one.settle_by},
                    {"guessed", one.guessed},
                    {"share_of_saving", share(one.on_saving)},
                    {"share_of_dryness", share(one.on_dryness)}});
  return list;
}

Json width_checks(const Assessment::Figures& figures) {
  Json list = Json::array();
  for (const auto& check : figures.width_checks)
    list.push_back({{"width_factor", finite(check.width)},
                    {"headline", json_word(check.headline)},
                    {"choice", json_word(check.option)},
                    {"share_acceptable", share(check.acceptable_share)}});
  return list;
}

Json flags(ValidityFlags flags) {
  Json list = Json::array();
  for (std::uint32_t bit = 1; bit != 0; bit <<= 1) {
    const auto flag = static_cast<ValidityFlag>(bit);
    if (flags.has(flag)) list.push_back(explain(flag));
  }
  return list;
}

}  // namespace dewgap::tools::json_parts
