# numerics/ is private: it may show Eigen, and no public header includes it.
install(TARGETS thermal EXPORT dewgapTargets
  ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR} LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR})
install(DIRECTORY dewgap DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}
  FILES_MATCHING PATTERN "*.hpp" PATTERN "numerics" EXCLUDE PATTERN "*_kernel.hpp" EXCLUDE)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/generated/dewgap/version.hpp DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/dewgap)

include(CMakePackageConfigHelpers)
set(package_dir ${CMAKE_INSTALL_LIBDIR}/cmake/dewgap)
install(EXPORT dewgapTargets NAMESPACE dewgap:: DESTINATION ${package_dir} FILE dewgapConfig.cmake)
write_basic_package_version_file(${CMAKE_CURRENT_BINARY_DIR}/dewgapConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/dewgapConfigVersion.cmake DESTINATION ${package_dir})
