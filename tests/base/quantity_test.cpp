#include "forecourse/base/quantity.h"

#include <gtest/gtest.h>

#include <type_traits>

namespace forecourse {
namespace {

template <class A, class B>
concept Adds = requires(A a, B b) {
  a + b;
};
template <class A, class B>
concept Subtracts = requires(A a, B b) {
  a - b;
};
template <class A, class B>
concept Compares = requires(A a, B b) {
  a < b;
};
template <class A, class B>
concept Equals = requires(A a, B b) {
  a == b;
};
template <class A, class B>
concept Assigns = requires(A a, B b) {
  a = b;
};

template <class A, class B>
constexpr bool mixes = Adds<A, B> || Subtracts<A, B> || Compares<A, B> || Equals<A, B> || Assigns<A, B>;

TEST(Quantity, OneKindWorksWithItself) {
  static_assert(Adds<Length, Length> && Subtracts<Length, Length> && Compares<Length, Length>);
  static_assert(Equals<Length, Length> && Assigns<Length, Length>);
  constexpr Length sum = Length::from_si(1.0) + 2.0 * Length::from_si(3.0) - Length::from_si(0.5);
  EXPECT_EQ(sum.si(), 6.5);
  EXPECT_EQ(Length::from_si(3.0) / Length::from_si(2.0), 1.5);
  EXPECT_LT(Length::from_si(1.0), Length::from_si(2.0));
  EXPECT_EQ(Length{}.si(), 0.0);
}

// Pairs that are easily taken for one another; each has one dimension or one name in everyday speech.
TEST(Quantity, KindsDoNotMix) {
  static_assert(!mixes<Length, VolumeFlow>);
  static_assert(!mixes<GaugePressure, AbsolutePressure>);
  static_assert(!mixes<GaugePressure, PressureDifference>);
  static_assert(!mixes<AbsolutePressure, PressureDifference>);
  static_assert(!mixes<Modulus, PressureDifference>);
  static_assert(!mixes<Temperature, TemperatureDifference>);
  static_assert(!mixes<DynamicViscosity, KinematicViscosity>);
  static_assert(!mixes<LinearLoss, SquareLoss>);
  static_assert(!mixes<Mass, Force>);
  static_assert(!mixes<Density, UnitWeight>);
  static_assert(!mixes<Ratio, Angle>);
}

TEST(Quantity, BareNumbersStayOutside) {
  static_assert(!mixes<Length, double> && !mixes<double, Length>);
  static_assert(!std::is_convertible_v<double, Length> && !std::is_constructible_v<Length, double>);
  static_assert(!std::is_convertible_v<Length, double>);
  static_assert(sizeof(Length) == sizeof(double));
}

TEST(Quantity, KnowsItsKind) {
  EXPECT_STREQ(Length::kind().noun, "a length");
  EXPECT_EQ(GaugePressure::kind().datum, Datum::gauge);
  EXPECT_EQ(SquareLoss::kind().dimension, PressureDifference::kind().dimension + (-2) * VolumeFlow::kind().dimension);
  EXPECT_EQ(UnitWeight::kind().dimension, Force::kind().dimension + (-1) * Volume::kind().dimension);
}

}  // namespace
}  // namespace forecourse
