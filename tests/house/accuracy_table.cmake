# Holds tools/accuracy-table to its promises on small tables made here. In: source_dir, work_dir.
file(REMOVE_RECURSE ${work_dir})
set(header "table,claim,status,rows,known_differences,worst,worst_relative\n")

function(run_on folder)
  execute_process(COMMAND ${source_dir}/tools/accuracy-table ${work_dir}/${folder}
    RESULT_VARIABLE code OUTPUT_VARIABLE text ERROR_QUIET)
  set(code ${code} PARENT_SCOPE)
  set(text "${text}" PARENT_SCOPE)
endfunction()

function(expect_line line)
  string(FIND "${text}" "${line}\n" at)
  if(at EQUAL -1)
    message(FATAL_ERROR "missing line:\n${line}\nin:\n${text}")
  endif()
endfunction()

file(WRITE ${work_dir}/good/accuracy/a-x.csv "${header}a/x.csv,half_digit,published,12,1,0.00449,0.01\n"
  "a/x.csv,half_digit,from_memory,3,0,0.02,0.01\na/x.csv,percent,published,4,0,9,0.0312\n")
file(WRITE ${work_dir}/good/accuracy/b-y.csv "${header}b/y.csv,bound,computed,5,5,0,0\n"
  "b/y.csv,half_digit,published,8,0,3e-14,1e-14\n")
run_on(good)
if(NOT code EQUAL 0)
  message(FATAL_ERROR "exit code ${code} for good tables")
endif()
expect_line("| published | `a/x.csv` | half a digit | 12 | 1 | 0.0045 |")
expect_line("| published | `b/y.csv` | half a digit | 8 | 0 | below 1e-9 |")
expect_line("| from memory | `a/x.csv` | half a digit | 3 | 0 | 0.02 |")
expect_line("| computed | `b/y.csv` | stated bound | 5 | 5 | - |")
expect_line("| published | `a/x.csv` | per cent | 4 | 0 | 3.1 % |")
# Published, from memory and computed are never added together, nor digits and per cent.
expect_line("Counted apart: 20 published, 1 of them known differences; 3 from memory, 0 of them known differences; \
5 computed, 5 of them known differences.")
expect_line("Counted apart: 4 published, 0 of them known differences.")

file(MAKE_DIRECTORY ${work_dir}/empty/accuracy)
run_on(empty)
if(code EQUAL 0)
  message(FATAL_ERROR "no table at all was accepted")
endif()
file(WRITE ${work_dir}/bad/accuracy/a.csv "${header}a/x.csv,half_digit,published,12\n")
run_on(bad)
if(code EQUAL 0)
  message(FATAL_ERROR "a malformed row was accepted")
endif()
