// What a drawn section says of its frame: Uf, or Psi of what stands beside it, by ISO 10077-2 annex C.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dewgap/window/edge_figures.hpp"
#include "tools/section/solved_section.hpp"

namespace dewgap::tools {

/// Either Uf of the frame (the panel beside it, no frame_U_W_m2K in the file) or Psi of the pane beside it.
struct FrameFigures {
  double beside_u_value_W_m2K = 0.0;  ///< Up or Ug: resistances of surfaces, layers and gaps in a row
  std::optional<FigureWithError> frame_u_value_W_m2K;
  std::optional<FigureWithError> psi_W_mK;
};

/// Nothing without [frame] in the file, or without one coupling. The error is that of L2D, carried through.
std::optional<FrameFigures> frame_figures(const SolvedSection& solved);

/// The coldest place along the faces of each gap and cavity that was solved, in the order of the file.
struct AirFace {
  std::string item;
  FaceTemperature lowest;
};
std::vector<AirFace> lowest_in_air(const SolvedSection& solved);

/// What of [frame] does not fit the drawing: told in the words of a problem of the file.
std::vector<FileProblem> frame_problems(const SectionFile& file);

}  // namespace dewgap::tools
