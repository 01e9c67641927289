# SPDX-License-Identifier: MIT
# Every data/*.toml is read and checked when the program is built and becomes bytes of it, found by name through
# embedded_table(). A wrong table stops the build with its place.
add_executable(faywright_pack ${CMAKE_CURRENT_LIST_DIR}/pack.cpp src/input/node.cpp src/input/diagnostic.cpp src/tables/table.cpp
               src/quantity/text.cpp src/quantity/characters.cpp src/quantity/nearest.cpp)
target_include_directories(faywright_pack PRIVATE src)
target_link_libraries(faywright_pack PRIVATE Boost::headers fmt::fmt)
target_compile_options(faywright_pack PRIVATE -O1)

file(GLOB tables CONFIGURE_DEPENDS ${CMAKE_CURRENT_LIST_DIR}/*.toml)
set(assembly "# generated from the tables in data\n.section .rodata\n")
set(declarations "")
set(lookups "")
set(packs "")
foreach(table IN LISTS tables)
  get_filename_component(name ${table} NAME_WE)
  string(REPLACE "-" "_" symbol ${name})
  set(pack ${CMAKE_BINARY_DIR}/packed/${name})
  add_custom_command(OUTPUT ${pack} COMMAND ${CMAKE_COMMAND} -E make_directory ${CMAKE_BINARY_DIR}/packed
                     COMMAND faywright_pack ${name} ${table} ${pack} DEPENDS faywright_pack ${table})
  list(APPEND packs ${pack})
  string(APPEND assembly
    ".global faywright_table_${symbol}\n.global faywright_table_${symbol}_end\n"
    "faywright_table_${symbol}:\n.incbin \"${pack}\"\nfaywright_table_${symbol}_end:\n.byte 0\n")
  string(APPEND declarations "extern const char faywright_table_${symbol};\nextern const char faywright_table_${symbol}_end;\n")
  string(APPEND lookups "    if (table == \"${name}\") return {&faywright_table_${symbol}, static_cast<std::size_t>(&faywright_table_${symbol}_end - &faywright_table_${symbol})};\n")
endforeach()
string(APPEND assembly ".section .note.GNU-stack,\"\",@progbits\n")
file(CONFIGURE OUTPUT ${CMAKE_BINARY_DIR}/embedded.S CONTENT "${assembly}" @ONLY)
file(CONFIGURE OUTPUT ${CMAKE_BINARY_DIR}/embedded.cpp CONTENT
"// generated from the tables in data
#include \"tables/embedded.hpp\"

extern \"C\" {
${declarations}}

std::string_view faywright::embedded_table(std::string_view table) {
${lookups}    return {};
}
" @ONLY)
set_source_files_properties(${CMAKE_BINARY_DIR}/embedded.S PROPERTIES OBJECT_DEPENDS "${packs}")
set(FAYWRIGHT_EMBEDDED_TABLES ${CMAKE_BINARY_DIR}/embedded.S ${CMAKE_BINARY_DIR}/embedded.cpp)
