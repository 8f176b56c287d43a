# tools/check compiles many sources as one, which takes a third of the time (CMAKE_UNITY_BUILD, CMakePresets.json). Then
# names in unnamed namespaces of one target meet. Sources that have such a name, or use one, are listed here with
# dewgap_compile_alone; a compiler that says 'redefinition', 'shadows' or 'ambiguous' only in tools/check asks for it.
function(dewgap_compile_alone)
  set_source_files_properties(${ARGN} PROPERTIES SKIP_UNITY_BUILD_INCLUSION ON)
endfunction()
