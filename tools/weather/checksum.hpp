// A checksum that tells one file from another. It guards against a mix-up, not against forgery.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace dewgap::tools {

/// FNV-1a, 64 bits, of the bytes: offset basis 14695981039346656037, prime 1099511628211 (Fowler, Noll and
/// Vo; from memory).
std::uint64_t fnv1a_64(std::string_view bytes);

/// Sixteen small hexadecimal digits.
std::string checksum_text(std::uint64_t checksum);

}  // namespace dewgap::tools
