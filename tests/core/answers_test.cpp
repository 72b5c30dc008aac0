// Answers to a second opinion, and base 64: what a page saved or a mail holds becomes advice about the right thing.
#include "core/sheet/answers.h"
#include "core/sheet/base64.h"

#include <catch2/catch.hpp>

using namespace hammerline;

namespace {

PianoRecord asked() {
    PianoRecord record;
    record.uuid = "6e0e7f5c-9b5e-4c7f-8f1e-0123456789ab";
    record.piano = *makePiano(ActionKind::upright);
    record.piano.name = "Parlour upright";
    Pass pass;
    pass.number = 1;
    record.passes.push_back(pass);
    return record;
}

RefusalCode refusalOf(const std::string& text, int line) {
    const auto read = readAnswers(text, asked(), "2026-11-29");
    REQUIRE_FALSE(read);
    CHECK(read.error().place.line == line);
    return read.error().code;
}

} // namespace

TEST_CASE("a saved answer is read by what it is about, over several lines, with its name") {
    const auto read = readAnswers("piano: 6e0e7f5c-9b5e-4c7f-8f1e-0123456789ab\nwho: Berta K.\n"
                                  "[40 bridle-strap rotted] not enough,\nfile again\n"
                                  "[- hammer-head] \n[pass 1] a dry room\n[piano] well worth it\n",
                                  asked(), "2026-11-29");
    REQUIRE(read);
    REQUIRE(read->size() == 3); // what says nothing is no advice
    const Remark& first = read->front();
    CHECK(first.kind == RemarkKind::advice);
    CHECK(first.about == About{{}, NoteNumber{40}, "bridle-strap", "rotted"});
    CHECK(first.text == "not enough,\nfile again");
    CHECK(first.who == "Berta K.");
    CHECK(first.on == "2026-11-29");
    CHECK((*read)[1].about == About{1, {}, {}, {}});
    CHECK((*read)[2].about == About{});
}

TEST_CASE("the lines of a mail are read through its marks and its greeting") {
    const auto read = readAnswers("Dear you,\r\nsee below\r\n> who: \r\n> on: 2026-12-01\r\n> [40] yes\r\n", asked(),
                                  "2026-11-29", "B.");
    REQUIRE(read);
    REQUIRE(read->size() == 1);
    CHECK(read->front().text == "yes");
    CHECK(read->front().on == "2026-12-01");
    CHECK(read->front().who.empty()); // the answer's own line says nobody
}

TEST_CASE("what names another piano, or a thing that is not there, is refused by its line") {
    CHECK(refusalOf("\npiano: 00000000-9b5e-4c7f-8f1e-0123456789ab\n[piano] x\n", 2) == RefusalCode::otherPiano);
    CHECK(refusalOf("[40] x\n[99] y\n", 2) == RefusalCode::unknownNote);
    CHECK(refusalOf("[40 knuckle] x\n", 1) == RefusalCode::unknownPart);
    CHECK(refusalOf("[pass 7] x\n", 1) == RefusalCode::noSuchPass);
    CHECK(refusalOf("thank you, all is well\n", 0) == RefusalCode::emptyFile);
    CHECK(refusalOf("[40]  \n", 0) == RefusalCode::emptyFile);
}

TEST_CASE("every code is read back as what it names") {
    for (const About& about : {About{}, About{1, {}, {}, {}}, About{{}, NoteNumber{40}, {}, {}},
                               About{{}, {}, "hammer-head", {}}, About{{}, NoteNumber{1}, "bridle-strap", "torn"}}) {
        const auto read = readAnswers('[' + answerCode(about) + "] x", asked(), "2026-11-29");
        REQUIRE(read);
        CHECK(read->front().about == about);
    }
}

// RFC 4648, section 10: test vectors.
TEST_CASE("base 64 by the vectors of its standard, and back") {
    const std::vector<std::pair<std::string, std::string>> vectors = {{"", ""},
                                                                      {"f", "Zg=="},
                                                                      {"fo", "Zm8="},
                                                                      {"foo", "Zm9v"},
                                                                      {"foob", "Zm9vYg=="},
                                                                      {"fooba", "Zm9vYmE="},
                                                                      {"foobar", "Zm9vYmFy"}};
    for (const auto& [bytes, text] : vectors) {
        CHECK(toBase64(bytes) == text);
        CHECK(fromBase64(text) == bytes);
    }
    std::string all;
    for (int i = 0; i < 256; ++i)
        all += static_cast<char>(i);
    CHECK(fromBase64(toBase64(all)) == all);
    for (const char* wrong : {"Zg=", "Z", "Zg==Zg==", "Zm9v\n", "Zm*v", "Zh==", "===="})
        CHECK_FALSE(fromBase64(wrong));
}
