#pragma once

#include <array>
#include <string_view>

namespace forecourse::site {

/// Kinds of product a site file can name. A kind stands for properties as far as the fuel layer knows them;
/// what it does not know must be entered.
inline constexpr std::array<std::string_view, 14> product_kinds{"gasoline-e0",
                                                                "gasoline-e5",
                                                                "gasoline-e10",
                                                                "gasoline-e15",
                                                                "e85",
                                                                "ethanol",
                                                                "diesel-b0",
                                                                "diesel-b5",
                                                                "diesel-b7",
                                                                "diesel-b20",
                                                                "kerosene",
                                                                "heating-oil",
                                                                "diesel-exhaust-fluid",
                                                                "other"};

}  // namespace forecourse::site
