// Includes point downwards only, and public headers show nothing of the libraries inside.
#include <gtest/gtest.h>

#include <regex>

#include "house.hpp"
#include "rooms.hpp"

namespace dewgap::house {
namespace {

RoomOrder order_of_the_house() {
  return RoomOrder(read_text("DEVELOPERS.md"));
}

std::string include_root_path(const std::string& path) {
  return path.substr(std::string("libthermal/").size());
}

TEST(Rooms, TheTableNamesEveryFolderAndEveryFolderIsInTheTable) {
  const auto order = order_of_the_house();
  EXPECT_GE(order.rooms().size(), 13u);
  for (const auto& room : order.rooms()) {
    EXPECT_TRUE(exists("libthermal/dewgap/" + room)) << room;
  }
  for (const auto& path : files_under("libthermal/dewgap", {".hpp", ".cpp"})) {
    EXPECT_NO_THROW(order.may_include(room_of(include_root_path(path)))) << path;
  }
}

TEST(Rooms, TheBuildLinksWhatTheTableSays) {
  static const std::regex call(R"(\ndewgap_add_room\(([a-z_ ]+)\))");
  const auto build = read_text("libthermal/CMakeLists.txt");
  const auto order = order_of_the_house();
  std::string as_table = "| room | holds | may include |\n| --- | --- | --- |\n";
  for (std::sregex_iterator it(build.begin(), build.end(), call), end; it != end; ++it) {
    const std::string names = (*it)[1];
    const auto space = names.find(' ');
    const auto below = space == std::string::npos ? "-" : names.substr(space);
    as_table += "| " + names.substr(0, space) + " | - | " + below + " |\n";
  }
  const RoomOrder linked(as_table);
  EXPECT_EQ(linked.rooms(), order.rooms());
  for (const auto& room : order.rooms()) {
    EXPECT_EQ(linked.may_include(room), order.may_include(room)) << room;
  }
}

TEST(Rooms, IncludesPointDownwards) {
  const auto order = order_of_the_house();
  for (const auto& path : files_under("libthermal/dewgap", {".hpp", ".cpp"})) {
    for (const auto& wrong : wrong_includes(order, include_root_path(path), read_text(path))) {
      ADD_FAILURE() << wrong;
    }
  }
}

// ---- the rule itself: it must catch what it is for
// ----------------------------------------------------------------

struct Case {
  std::string_view path;
  std::string_view source;
  std::size_t wrong;
};

class IncludeRule : public testing::TestWithParam<Case> {};

TEST_P(IncludeRule, CatchesWhatItMust) {
  const auto& given = GetParam();
  const auto wrong = wrong_includes(order_of_the_house(), given.path, given.source);
  EXPECT_EQ(wrong.size(), given.wrong) << given.path << ": " << given.source;
}

INSTANTIATE_TEST_SUITE_P(
    Fixtures, IncludeRule,
    testing::Values(
        Case{"dewgap/glazing/stack.cpp", "#include \"dewgap/gap/steady.hpp\"\n", 1},
        Case{"dewgap/air/gas.hpp", "#  include   \"dewgap/glazing/stack.hpp\"\n", 1},
        Case{"dewgap/window/cover.cpp", "#include <dewgap/moisture/criteria.hpp>\n", 1},
        Case{"dewgap/errors.hpp", "#include \"dewgap/air/gas.hpp\"\n", 1},
        Case{"dewgap/air/gas.hpp", "#include <Eigen/Dense>\n#include <boost/math/tools/roots.hpp>\n", 2},
        Case{"dewgap/air/gas.hpp", "#include \"dewgap/numerics/csv_text.hpp\"\n", 1},
        Case{"dewgap/air/gas.hpp", "#include \"dewgap/air/gas_kernel.hpp\"\n", 1},
        Case{"dewgap/air/gas.cpp", "#include <fmt/format.h>\n#include <fstream>\n", 2},
        Case{"dewgap/air/gas.cpp", "#include \"gas.hpp\"\n", 1},
        Case{"dewgap/air/gas.cpp", "#include \"embedded/room_climate.hpp\"\n", 1},
        // and what is in order
        Case{"dewgap/gap/steady.cpp", "#include \"dewgap/air/gas.hpp\"\n#include <vector>\n", 0},
        Case{"dewgap/air/gas.cpp", "#include \"dewgap/numerics/csv_text.hpp\"\n#include <Eigen/Dense>\n", 0},
        Case{"dewgap/air/gas_kernel.hpp", "#include <Eigen/Dense>\n", 0},
        Case{"dewgap/climate/places.cpp", "#include \"embedded/room_climate.hpp\"\n", 0},
        Case{"dewgap/assessment/assess.cpp", "#include \"dewgap/fitting/sheet_plan.hpp\"\n", 0},
        Case{"dewgap/air/gas.hpp", "#include \"dewgap/errors.hpp\"\n", 0}));

TEST(IncludeRule, ReadsTheTableAsWritten) {
  const RoomOrder order(
      "| room | holds | may include |\n| --- | --- | --- |\n| (root) | words | - |\n"
      "| `a/` | x | - |\n| `b/` | y | a |\n| `c/` | z | b |\n| `d/` | w | all |\n\nOther text\n");
  EXPECT_EQ(order.may_include("c"), (std::set<std::string>{"(root)", "a", "b", "c"}));
  EXPECT_EQ(order.may_include("d"), (std::set<std::string>{"(root)", "a", "b", "c", "d"}));
  EXPECT_EQ(order.may_include("a"), (std::set<std::string>{"(root)", "a"}));
  EXPECT_THROW(order.may_include("e"), std::runtime_error);
  EXPECT_THROW(RoomOrder("no table"), std::runtime_error);
  EXPECT_THROW(RoomOrder("| room | holds | may include |\n| `a/` | x | b |\n| `b/` | y | - |\n"),
               std::runtime_error);
}

}  // namespace
}  // namespace dewgap::house
