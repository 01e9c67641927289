# SPDX-License-Identifier: MIT
# The style of all documents becomes bytes of the program.
set(style ${CMAKE_CURRENT_LIST_DIR}/style.css)
file(CONFIGURE OUTPUT ${CMAKE_BINARY_DIR}/style.S CONTENT
"# generated
.section .rodata
.global faywright_style
.global faywright_style_end
faywright_style:
.incbin \"${style}\"
faywright_style_end:
.byte 0
.section .note.GNU-stack,\"\",@progbits
" @ONLY)
set_source_files_properties(${CMAKE_BINARY_DIR}/style.S PROPERTIES OBJECT_DEPENDS ${style})
set(FAYWRIGHT_EMBEDDED_STYLE ${CMAKE_BINARY_DIR}/style.S)
