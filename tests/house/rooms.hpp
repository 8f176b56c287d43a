// The order of the rooms, read from the table of DEVELOPERS.md, and the includes that break it.
#pragma once

#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace dewgap::house {

/// The room of the words that the whole house shares: files directly under libthermal/dewgap/.
inline constexpr std::string_view root_room = "(root)";

class RoomOrder {
 public:
  /// Reads the table whose header has the columns `room` and `may include`. A room may include itself,
  /// (root), the rooms that its row names and what those may include; `all` names every room above it in the
  /// table. Throws std::runtime_error when there is no such table, or a row names a room that does not stand
  /// above it.
  explicit RoomOrder(std::string_view developers_guide);

  /// In the table's order, without (root).
  const std::vector<std::string>& rooms() const { return rooms_; }
  /// Everything that the room may include, itself and (root) among them. Throws for an unknown room.
  const std::set<std::string>& may_include(std::string_view room) const;

 private:
  void add_row(const std::string& room, const std::string& named);

  std::vector<std::string> rooms_;
  std::map<std::string, std::set<std::string>, std::less<>> allowed_;
};

/// Room of a file under libthermal/dewgap/; `path` starts with "dewgap/".
std::string room_of(std::string_view path);

/// Whether a header is for users of the library: neither in numerics/ nor a *_kernel.hpp.
bool is_public_header(std::string_view path);

/// One sentence for each include of a source of the library that a rule forbids. `path` starts with
/// "dewgap/".
std::vector<std::string> wrong_includes(const RoomOrder& order, std::string_view path,
                                        std::string_view source);

}  // namespace dewgap::house
