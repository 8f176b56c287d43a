#include "tools/weather/checksum.hpp"

#include <fmt/format.h>

namespace dewgap::tools {

std::uint64_t fnv1a_64(std::string_view bytes) {
  std::uint64_t hash = 14695981039346656037U;
  for (const char byte : bytes) {
    hash ^= static_cast<unsigned char>(byte);
    hash *= 1099511628211U;
  }
  return hash;
}

std::string checksum_text(std::uint64_t checksum) {
  return fmt::format("{:016x}", checksum);
}

}  // namespace dewgap::tools
