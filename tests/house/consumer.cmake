# Installs the library into a scratch prefix, then configures, builds and runs the consumer against it.
# In: build_dir, work_dir, consumer_dir, compiler; with source_dir, the library is first built in build_dir, shared or not
# as `shared` says.
set(prefix ${work_dir}/prefix)
file(REMOVE_RECURSE ${work_dir})

function(run)
  execute_process(COMMAND ${ARGV} RESULT_VARIABLE code OUTPUT_VARIABLE text ERROR_VARIABLE text)
  if(NOT code EQUAL 0)
    list(JOIN ARGV " " command)
    message("${text}")
    message(FATAL_ERROR "failed (${code}): ${command}")
  endif()
  set(output "${text}" PARENT_SCOPE)
endfunction()

if(source_dir)
  run(${CMAKE_COMMAND} -S ${source_dir} -B ${build_dir} -G Ninja -D CMAKE_CXX_COMPILER=${compiler}
      -D CMAKE_BUILD_TYPE=Debug -D BUILD_SHARED_LIBS=${shared} -D DEWGAP_BUILD_TOOLS=OFF -D DEWGAP_BUILD_TESTS=OFF)
  run(${CMAKE_COMMAND} --build ${build_dir} --target thermal)
endif()
run(${CMAKE_COMMAND} --install ${build_dir} --prefix ${prefix} --component library)

# What a consumer is given names nothing that the project uses inside.
file(GLOB_RECURSE installed ${prefix}/*.hpp ${prefix}/*.cmake)
if(NOT installed)
  message(FATAL_ERROR "nothing was installed under ${prefix}")
endif()
foreach(file IN LISTS installed)
  file(STRINGS ${file} leaks REGEX "([Ee]igen|[Bb]oost|dewgap_warnings|-Werror|fmt::|CLI11|toml\\+\\+).*")
  list(FILTER leaks INCLUDE REGEX "^ *#include|LINK_LIBRARIES|COMPILE_OPTIONS|find_")
  if(leaks)
    message(FATAL_ERROR "${file} leaks what the library uses inside: ${leaks}")
  endif()
endforeach()

run(${CMAKE_COMMAND} -S ${consumer_dir} -B ${work_dir}/build -G Ninja -D CMAKE_CXX_COMPILER=${compiler}
    -D CMAKE_PREFIX_PATH=${prefix} -D CMAKE_FIND_USE_PACKAGE_REGISTRY=OFF)
run(${CMAKE_COMMAND} --build ${work_dir}/build)
run(${work_dir}/build/consumer)
message("${output}")
