// Alone in its file: the validator is slow to compile.
#include "schema_complaints.hpp"

#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wall"
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>
#pragma GCC diagnostic pop

#include "run_cli.hpp"

namespace dewgap::test {

using nlohmann::json;
namespace {
using Adapter = valijson::adapters::NlohmannJsonAdapter;
}  // namespace

std::string complaints(const json& document, const std::vector<std::string>& schema_arguments) {
  const json schema_document = json::parse(run_cli(schema_arguments).out);
  valijson::Schema schema;
  valijson::SchemaParser(valijson::SchemaParser::kDraft7).populateSchema(Adapter(schema_document), schema);
  valijson::Validator validator;
  valijson::ValidationResults results;
  if (validator.validate(schema, Adapter(document), &results)) return {};
  std::string all;
  valijson::ValidationResults::Error error;
  while (results.popError(error)) {
    for (const auto& step : error.context) all += step;
    all += ": " + error.description + "\n";
  }
  return all.empty() ? "refused without a reason" : all;
}

}  // namespace dewgap::test
