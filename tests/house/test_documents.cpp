// Paths that the documents name exist.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <regex>
#include <set>

#include "house.hpp"

namespace dewgap::house {
namespace {

constexpr std::array<std::string_view, 7> folders{"libthermal/", "tools/", "tests/", "reference/",
                                                  "examples/",   "docs/",  ".ci/"};

std::vector<std::string> documents() {
  std::vector<std::string> paths{"README.md", "DEVELOPERS.md"};
  for (const auto* folder : {"reference", "libthermal", "tools", "tests", "examples", "docs"}) {
    if (exists(folder)) {
      try {
        const auto below = files_under(folder, {".md"});
        paths.insert(paths.end(), below.begin(), below.end());
      } catch (const std::runtime_error&) {
        continue;  // a folder without documents
      }
    }
  }
  return paths;
}

// A name that stands for many: <room>, *, {a,b}, test_thing.cpp.
bool is_pattern(const std::string& path) {
  return path.find_first_of("<>*{}") != std::string::npos || path.find("thing") != std::string::npos;
}

std::set<std::string> paths_in(const std::string& text, const std::string& document) {
  static const std::regex in_code(R"(`([A-Za-z0-9_./<>*{}-]+/[A-Za-z0-9_./<>*{}-]*)`)");
  static const std::regex in_link(R"(\]\(([^)#:]+)(#[^)]*)?\))");
  std::set<std::string> paths;
  for (std::sregex_iterator it(text.begin(), text.end(), in_code), end; it != end; ++it) {
    const std::string path = (*it)[1];
    if (std::any_of(folders.begin(), folders.end(), [&](auto folder) { return path.starts_with(folder); })) {
      paths.insert(path);
    }
  }
  const auto folder = std::filesystem::path(document).parent_path();
  for (std::sregex_iterator it(text.begin(), text.end(), in_link), end; it != end; ++it) {
    paths.insert((folder / (*it)[1].str()).lexically_normal().generic_string());
  }
  return paths;
}

TEST(Documents, FindsThePathsInAText) {
  const auto paths =
      paths_in("see `tools/check`, [this](thing.csv#x), `m3/(h m)`, `air/`, [site](https://a.b)",
               "reference/source/README.md");
  EXPECT_EQ(paths, (std::set<std::string>{"tools/check", "reference/source/thing.csv"}));
}

TEST(Documents, PathsExist) {
  std::size_t looked_at = 0;
  for (const auto& document : documents()) {
    for (const auto& path : paths_in(read_text(document), document)) {
      if (!is_pattern(path)) {
        ++looked_at;
        EXPECT_TRUE(exists(path)) << document << " names " << path;
      }
    }
  }
  EXPECT_GE(looked_at, 10u);
}

TEST(Documents, EachReferenceWorkIsListedOnce) {
  static const std::regex entry(R"(@[a-z]+\{([A-Za-z0-9_:-]+),)");
  const auto text = read_text("reference/references.bib");
  std::set<std::string> keys;
  for (std::sregex_iterator it(text.begin(), text.end(), entry), end; it != end; ++it) {
    EXPECT_TRUE(keys.insert((*it)[1]).second) << "twice: " << (*it)[1];
  }
  EXPECT_GE(keys.size(), 20u);
}

}  // namespace
}  // namespace dewgap::house
