# The warnings of the whole house, in one private target.
add_library(dewgap_warnings INTERFACE)
target_compile_options(dewgap_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wold-style-cast
  -Wnon-virtual-dtor -Woverloaded-virtual -Wdouble-promotion -Wformat=2
  $<$<BOOL:${DEWGAP_STRICT}>:-Werror>
  -ffp-contract=off)
# g++ warns about every member that designated initialisers leave at its default; clang does not.
target_compile_options(dewgap_warnings INTERFACE -Wno-missing-field-initializers)
# g++ 12 reports std::string concatenation at -O3 as an overlapping copy (GCC bug 105651): a false alarm.
target_compile_options(dewgap_warnings INTERFACE $<$<CXX_COMPILER_ID:GNU>:-Wno-restrict>)
