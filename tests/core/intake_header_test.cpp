// The words of column heads (situation 73; other languages: common practice, no source).
#include "core/intake/intake.h"

#include <catch2/catch.hpp>

using namespace hammerline;
using namespace hammerline::dimension;
using Use = ColumnUse::Use;

namespace {

void means(std::string_view head, DimensionId id, std::optional<Unit> unit = std::nullopt) {
    INFO(head);
    const auto meaning = headerMeaning(head);
    CHECK(meaning.use == Use::dimension);
    REQUIRE(meaning.dimension.has_value());
    CHECK(key(*meaning.dimension) == key(id));
    CHECK(meaning.unit == unit);
}

} // namespace

TEST_CASE("the words of the lists of technicians") { // situation 73
    for (const auto* head : {"let-off", "Let off", "set-off", "escapement", "LETOFF"})
        means(head, letOff);
    for (const auto* head : {"dip", "touch depth", "Key Dip", "key_dip"})
        means(head, keyDip);
    for (const auto* head : {"blow", "hammer travel", "Hammer blow"})
        means(head, blow);
    for (const auto* head : {"check", "checking distance", "catch", "checking"})
        means(head, checking);
    means("half-blow", halfBlow);
    means("aftertouch", aftertouch);
    means("AT", aftertouch);
    means("lost motion", lostMotion);
    means("Damper lift", damperStart);
    means("Tiefgang", keyDip);
    means("Spieltiefe", keyDip);
    means("Steighöhe", blow);
    means("Auslösung", letOff);
    means("Fänger", checking);
    means("Stoßzungenluft", lostMotion);
    means("Luft", lostMotion);
    means("Höhe", keyHeight);
}

TEST_CASE("heads in French, Spanish, Italian and Dutch") {
    means("Enfoncement", keyDip);
    means("Course du marteau (mm)", blow, Unit::mm);
    means("Échappement", letOff);
    means("Jeu mort", lostMotion);
    means("Attrape", checking);
    means("Hundimiento", keyDip);
    means("Recorrido del martillo", blow);
    means("Escape", letOff);
    means("Affondo", keyDip);
    means("Corsa martello", blow);
    means("Scappamento", letOff);
    means("Paramartello", checking);
    means("Toetsdiepgang", keyDip);
    means("Slagweg", blow);
    means("Uitlossing", letOff);
    means("Vanger", checking);
}

TEST_CASE("every catalogue key is a head") {
    for (const Dimension& each : dimensions())
        means(each.key, each.id);
}

TEST_CASE("units in heads") {
    means("Touch depth (in)", keyDip, Unit::inch);
    means("Blow [mm]", blow, Unit::mm);
    means("dip_mm", keyDip, Unit::mm);
    means("Spieltiefe mm", keyDip, Unit::mm);
    means("AT (thou)", aftertouch, Unit::thou);
    means("aftertouch, thou", aftertouch, Unit::thou);
    means("dip in mm", keyDip, Unit::mm);
    means("Blow in", blow, Unit::inch);
    means("Spieltiefe (Zoll)", keyDip, Unit::inch);
    means("down weight (g)", downWeight, Unit::gram);
    means("damper start (%)", damperStart, Unit::percent);
    means("lost motion (.001 in)", lostMotion, Unit::thou);
    means("key dip (naturals)", keyDip);
}

TEST_CASE("a head that may mean two things is ambiguous") {
    for (const auto* head : {"strike distance", "striking distance", "damper", "weight", "Dämpfer"}) // situation 73
        CHECK(headerMeaning(head).use == Use::ambiguous);
    CHECK(headerMeaning("strike distance").dimension == blow);
    CHECK(headerMeaning("blow (1/64 in)").use == Use::ambiguous); // a count of sixty-fourths is no unit here
}

TEST_CASE("note columns and strangers") {
    for (const auto* head : {"Note", "key", "Taste", "Touche", "Tecla", "Tasto", "Toets", "No.", "#", "Nº", "Ton"})
        CHECK(headerMeaning(head).use == Use::note);
    for (const auto* head : {"", "remark", "notes", "date", "mm", "1", "|dip|", "\xff"})
        CHECK(headerMeaning(head).use == Use::ignored);
}
