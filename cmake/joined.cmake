# joined(SOURCES ROOT MOST_LINES [EXCEPT PATTERN] [FOLDERS FOLDER...]): makes of the list SOURCES, of files under ROOT, a
# shorter one that is compiled in its place, since most of the time would go into reading the same headers; anew
# whenever a source changes. Files that match PATTERN stay apart. What may be joined: tools/units.py.
set(units_script ${CMAKE_CURRENT_LIST_DIR}/../tools/units.py)
function(joined sources root most_lines)
  cmake_parse_arguments(PARSE_ARGV 3 given "" EXCEPT FOLDERS)
  set(apart)
  set(together ${${sources}})
  if(given_EXCEPT)
    set(apart ${${sources}})
    list(FILTER apart INCLUDE REGEX "${given_EXCEPT}")
    list(FILTER together EXCLUDE REGEX "${given_EXCEPT}")
  endif()
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${together} ${units_script})
  find_program(python NAMES python3 REQUIRED)
  set(place ${CMAKE_CURRENT_BINARY_DIR}/joined/${sources})
  list(JOIN together "\n" names)
  file(WRITE ${place}.txt "${names}\n")
  execute_process(COMMAND ${python} ${units_script} ${place} ${most_lines} ${root} ${given_FOLDERS}
    INPUT_FILE ${place}.txt OUTPUT_VARIABLE units COMMAND_ERROR_IS_FATAL ANY)
  string(STRIP "${units}" units)
  string(REPLACE "\n" ";" units "${units}")
  set(${sources} ${units} ${apart} PARENT_SCOPE)
endfunction()
