#pragma once

#include <vector>

#include "forecourse/handover/drawings/drawing.h"

namespace forecourse::handover {

/// The symbols of a plan, and of a section. After the habit of ISO 10628-2 and ISA-5.1 (pump: circle with triangle;
/// valve: two triangles); the shear valve is a valve across the line of the island. Common practice, no source.
[[nodiscard]] std::vector<Symbol> plan_symbols();
[[nodiscard]] std::vector<Symbol> section_symbols();

/// The layers of a drawing, those of lines by the products that flow in them.
[[nodiscard]] std::vector<Layer> drawing_layers(const std::vector<std::string>& products);

/// The layer of the lines of a product.
[[nodiscard]] std::string line_layer(const std::string& product);

}  // namespace forecourse::handover
