# The library as other projects get it: component `library`, target dewgap::thermal, public headers only.
# Its objects use Eigen and Boost inside; no installed header and no exported target names them.
# numerics/ is private: it may show Eigen, and no public header includes it.
install(TARGETS thermal EXPORT dewgapTargets
  ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT library
  LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT library NAMELINK_COMPONENT library)
install(DIRECTORY dewgap DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT library
  FILES_MATCHING PATTERN "*.hpp" PATTERN "numerics" EXCLUDE PATTERN "*_kernel.hpp" EXCLUDE)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/generated/dewgap/version.hpp
  DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/dewgap COMPONENT library)

include(CMakePackageConfigHelpers)
set(package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/dewgap)
install(EXPORT dewgapTargets NAMESPACE dewgap:: DESTINATION ${package_dir} FILE dewgapConfig.cmake COMPONENT library)
write_basic_package_version_file(${CMAKE_CURRENT_BINARY_DIR}/dewgapConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/dewgapConfigVersion.cmake DESTINATION ${package_dir} COMPONENT library)
