# dewgap_embed_text(<target> <namespace> <name>=<file> ...)
# Compiles text files into <target> as std::string_view constants, so that the library reads no file at run time.
# Include them with #include "embedded/<target>.hpp".
function(dewgap_embed_text target name_space)
  set(folder ${CMAKE_CURRENT_BINARY_DIR}/embedded_${target})
  set(declarations "")
  set(definitions "")
  foreach(pair IN LISTS ARGN)
    string(REGEX MATCH "^([a-z0-9_]+)=(.+)$" matched ${pair})
    if(NOT matched)
      message(FATAL_ERROR "dewgap_embed_text: '${pair}' is not name=file")
    endif()
    set(name ${CMAKE_MATCH_1})
    cmake_path(ABSOLUTE_PATH CMAKE_MATCH_2 BASE_DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR} OUTPUT_VARIABLE path)
    set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${path})
    file(READ ${path} bytes HEX)
    string(REGEX REPLACE "(..)" "\\\\x\\1" escaped "${bytes}")
    # One literal per 64 bytes: compilers limit the length of a line, and \x escapes must not run together.
    string(REPEAT "\\\\x.." 64 run)
    string(REGEX REPLACE "(${run})" "\\1\"\n\"" escaped "${escaped}")
    file(SIZE ${path} length)
    string(APPEND declarations "extern const std::string_view ${name};\n")
    # Declared extern in the header, so that the constant can be seen from other files.
    string(APPEND definitions "const std::string_view ${name}{\n\"${escaped}\",\n${length}};\n")
  endforeach()
  file(CONFIGURE OUTPUT ${folder}/embedded/${target}.hpp @ONLY CONTENT
"#pragma once\n#include <string_view>\nnamespace ${name_space} {\n${declarations}}  // namespace ${name_space}\n")
  file(CONFIGURE OUTPUT ${folder}/embedded/${target}.cpp @ONLY CONTENT
"#include \"embedded/${target}.hpp\"\nnamespace ${name_space} {\n${definitions}}  // namespace ${name_space}\n")
  target_sources(${target} PRIVATE ${folder}/embedded/${target}.cpp)
  target_include_directories(${target} PRIVATE ${folder})
endfunction()
