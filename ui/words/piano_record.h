// Whose piano it is, remarks about it, and finding it among many, in words.
#pragma once

#include "core/history/record.h"

#include <QString>
#include <QStringList>

namespace hammerline::words {

/// "Maker", "Who works on it": the label of a field.
QString identityName(std::string_view key);
/// An example to stand in an empty field.
QString identityHint(std::string_view key);
/// "1912, serial number 12345, owner Anna B., place: school hall": the fields that are said, in one line; empty: none.
QString identityLine(const Identity&);

/// Whether every word typed stands in one of the texts, without case and without marks on letters.
/// No words: every piano is found.
bool holdsWords(const QString& words, const QStringList& texts);

/// "note 40, bridle strap, torn", "pass 2", "the piano".
QString aboutText(const About&, const Piano&);
/// "2026-11-29, Anna: note 40, bridle strap: it was glued before"
QString remarkSentence(const Remark&, const Piano&);
/// "2026-11-29, note 40, hammer: worn at the strike point"
QString photoSentence(const Photo&, const Piano&);
QString remarkKindName(RemarkKind);

} // namespace hammerline::words
