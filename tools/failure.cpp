#include "tools/failure.hpp"

#include <ostream>

#include "tools/answer/plain_text.hpp"

namespace dewgap::tools {

int exit_code_of(const std::function<void()>& work, std::ostream& err) {
  try {
    work();
    return static_cast<int>(ExitCode::computed);
  } catch (const Failure& failure) {
    err << failure.what();
    return static_cast<int>(failure.code());
  } catch (const std::exception& error) {
    err << "dewgap: could not be computed: " << harmless(error.what()) << "\n";
    return static_cast<int>(ExitCode::not_computed);
  }
}

}  // namespace dewgap::tools
