# Turns text files into a C++ source that holds them, in the order given.
#   cmake -DOUTPUT=file.cpp "-DINPUTS=a.toml;b.toml" -DHEADER=folder/name.h -DNAMESPACE=a::b -DFUNCTION=name -P embed.cmake
# The source defines  std::span<const std::string_view> NAMESPACE::FUNCTION()  as the header declares it.
set(literals "")
foreach(input IN LISTS INPUTS)
  file(READ ${input} text)
  string(APPEND literals "      R\"embedded(${text})embedded\",\n")
endforeach()
file(WRITE ${OUTPUT} "#include \"${HEADER}\"

#include <array>

namespace ${NAMESPACE} {

std::span<const std::string_view> ${FUNCTION}() {
  static constexpr auto texts = std::to_array<std::string_view>({
${literals}  });
  return texts;
}

}  // namespace ${NAMESPACE}
")
