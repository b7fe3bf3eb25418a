# embed_texts(OUTPUT HEADER NAMESPACE FUNCTION FILE...): a C++ source that holds text files, made by embed.cmake.
function(embed_texts output header namespace function)
  set(script ${CMAKE_CURRENT_FUNCTION_LIST_DIR}/embed.cmake)
  add_custom_command(OUTPUT ${output}
    COMMAND ${CMAKE_COMMAND} -DOUTPUT=${output} "-DINPUTS=${ARGN}" -DHEADER=${header} -DNAMESPACE=${namespace}
      -DFUNCTION=${function} -P ${script}
    DEPENDS ${ARGN} ${script} VERBATIM)
endfunction()
