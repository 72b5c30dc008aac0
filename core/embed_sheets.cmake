# Writes the spec sheets DIR/*.json into one C++ unit OUT, plainest first.
set(text "#include \"core/spec/built_in_sheets.h\"\n\n#include <array>\n\nnamespace hammerline {\nstd::span<const SheetText> sheetTexts() {\n    static constexpr std::array sheets = {\n")
foreach(sheet upright old-upright drop grand)
  file(READ ${DIR}/${sheet}.json json)
  string(APPEND text "        SheetText{\"${sheet}\", R\"json(${json})json\"},\n")
endforeach()
string(APPEND text "    };\n    return sheets;\n}\n} // namespace hammerline\n")
file(WRITE ${OUT} "${text}")
