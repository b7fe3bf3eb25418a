#pragma once

#include <string_view>

namespace forecourse::site {

/// Visitor of the descriptions in fields/ that passes every value by. What derives from it tells what it comes to, and
/// whether it goes into tables, sections and lists.
class PassingVisitor {
 public:
  void about(std::string_view, std::string_view) {}
  void format(std::string_view, std::string_view) {}
  template <class... A>
  void name(A&&...) {}
  template <class... A>
  void id(A&&...) {}
  template <class... A>
  void optional_id(A&&...) {}
  template <class... A>
  void clock(A&&...) {}
  template <class... A>
  void fact(A&&...) {}
  template <class... A>
  void date(A&&...) {}
  template <class... A>
  void number(A&&...) {}
  template <class... A>
  void numbers(A&&...) {}
  template <class... A>
  void quantity(A&&...) {}
  template <class... A>
  void required_quantity(A&&...) {}
  template <class... A>
  void reference(A&&...) {}
  template <class... A>
  void references(A&&...) {}
  template <class... A>
  void names(A&&...) {}
  template <class... A>
  void name_sets(A&&...) {}
  template <class... A>
  void word(A&&...) {}
  template <class... A>
  void choice(A&&...) {}
  template <class... A>
  void points(A&&...) {}
  template <class... A>
  void coefficients(A&&...) {}
  template <class... A>
  void position(A&&...) {}
  template <class... A>
  void loss(A&&...) {}
  template <class... A>
  void pipe(A&&...) {}
  template <class... A>
  void part(A&&...) {}
};

}  // namespace forecourse::site
