# SPDX-License-Identifier: MIT
# Every data/*.toml becomes bytes of the program, found by name through embedded_table().
file(GLOB tables CONFIGURE_DEPENDS ${CMAKE_CURRENT_LIST_DIR}/*.toml)
set(FAYWRIGHT_EMBEDDED_TABLES ${CMAKE_BINARY_DIR}/embedded.S ${CMAKE_BINARY_DIR}/embedded.cpp)
set(assembly "# generated from the tables in data\n.section .rodata\n")
set(declarations "")
set(lookups "")
foreach(table IN LISTS tables)
  get_filename_component(name ${table} NAME_WE)
  string(REPLACE "-" "_" symbol ${name})
  string(APPEND assembly
    ".global faywright_table_${symbol}\n.global faywright_table_${symbol}_end\n"
    "faywright_table_${symbol}:\n.incbin \"${table}\"\nfaywright_table_${symbol}_end:\n.byte 0\n")
  string(APPEND declarations "extern const char faywright_table_${symbol};\nextern const char faywright_table_${symbol}_end;\n")
  string(APPEND lookups "    if (table == \"${name}\") return {&faywright_table_${symbol}, static_cast<std::size_t>(&faywright_table_${symbol}_end - &faywright_table_${symbol})};\n")
endforeach()
string(APPEND assembly ".section .note.GNU-stack,\"\",@progbits\n")
file(CONFIGURE OUTPUT ${CMAKE_BINARY_DIR}/embedded.S CONTENT "${assembly}" @ONLY)
file(CONFIGURE OUTPUT ${CMAKE_BINARY_DIR}/embedded.cpp CONTENT
"// generated from data/*.toml
#include \"tables/embedded.hpp\"

extern \"C\" {
${declarations}}

std::string_view faywright::embedded_table(std::string_view table) {
${lookups}    return {};
}
" @ONLY)
set_source_files_properties(${CMAKE_BINARY_DIR}/embedded.S PROPERTIES OBJECT_DEPENDS "${tables}")
