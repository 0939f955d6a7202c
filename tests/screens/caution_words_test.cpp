// No caution and no other text of the program says that a place is without danger or lets anybody
// in; the banned words stand in tests/architecture/banned_words.txt and here.
#include "screens/caution_words.h"

#include <QDirIterator>
#include <QFile>
#include <QMetaProperty>
#include <QRegularExpression>
#include <gtest/gtest.h>

namespace jambline::screens {
namespace {

const QRegularExpression& banned() {
  static const QRegularExpression out(
      QStringLiteral(
          "\\b(safe|safely|safety guaranteed|OK to (enter|go in|spray)|all clear|"
          "cleared to|clear to (enter|spray)|you (may|can) (enter|go in)|good to go|go ahead|"
          "no (danger|risk|hazard)|without (danger|risk)|harmless|risk-free|danger-free|"
          "(air|booth) is (clean|clear|fine|good))\\b"),
      QRegularExpression::CaseInsensitiveOption);
  return out;
}

QString found_in(const QString& text) {
  return banned().match(text).captured();
}

QStringList texts_of(const QVariant& value) {
  QStringList out;
  if (value.typeId() == QMetaType::QVariantList)
    for (const auto& one : value.toList()) out << texts_of(one);
  else if (value.typeId() == QMetaType::QVariantMap)
    for (const auto& one : value.toMap()) out << texts_of(one);
  else if (value.typeId() == QMetaType::QStringList)
    out << value.toStringList();
  else if (value.typeId() == QMetaType::QString)
    out << value.toString();
  return out;
}

// What stands between quotes in every call of a translation.
QStringList translated_in(const QString& source) {
  static const QRegularExpression call(
      QStringLiteral("\\b(?:qsTr|tr|translate|QT_TRANSLATE_NOOP|QT_TR_NOOP)\\s*\\(((?:\\s*"
                     "\"(?:[^\"\\\\]|\\\\.)*\"\\s*,?)+)"));
  static const QRegularExpression literal(QStringLiteral("\"((?:[^\"\\\\]|\\\\.)*)\""));
  QStringList out;
  for (auto calls = call.globalMatch(source); calls.hasNext();) {
    QString whole;
    for (auto parts = literal.globalMatch(calls.next().captured(1)); parts.hasNext();)
      whole += parts.next().captured(1);
    out << whole;
  }
  return out;
}

TEST(CautionWords, TheWordsAreFoundWhereTheyStand) {
  for (const char* bad : {"The booth is clear", "It is safe now", "OK to enter", "You may go in",
                          "All clear.", "Cleared to spray"})
    EXPECT_FALSE(found_in(QString::fromLatin1(bad)).isEmpty()) << bad;
  for (const char* good :
       {"Stay out", "until a doctor has cleared you", "clears 10:49", "the safety data sheet wins"})
    EXPECT_TRUE(found_in(QString::fromLatin1(good)).isEmpty()) << good;
  EXPECT_EQ(translated_in(QStringLiteral("x(tr(\"It is \"\n   \"safe\"), qsTr(\"b\"))")),
            QStringList({QStringLiteral("It is safe"), QStringLiteral("b")}));
}

TEST(CautionWords, LiftingAndStoredEnergyStandWherePartsComeOffAreHungAndFitted) {
  using job::Stage;
  const QString lifting = words_of(Caution::Lifting);
  const QString energy = words_of(Caution::StoredEnergy);
  for (std::size_t i = 0; i < enum_words<Stage>.size(); ++i) {
    const auto stage = static_cast<Stage>(i);
    const QStringList said = stage_cautions(stage);
    const bool lifts = stage == Stage::Teardown || stage == Stage::BodyAndTrialFit ||
                       stage == Stage::Assemble || stage == Stage::Glass || stage == Stage::Fit;
    const bool near_energy = (lifts && stage != Stage::Fit) || stage == Stage::SensorsAndScan;
    EXPECT_EQ(said.contains(lifting), lifts) << word_of(stage);
    EXPECT_EQ(said.contains(energy), near_energy) << word_of(stage);
  }
}

TEST(CautionWords, NoCautionSaysThatAnythingIsWithoutDanger) {
  const Cautions all;
  int count = 0;
  const QMetaObject* meta = all.metaObject();
  for (int i = meta->propertyOffset(); i < meta->propertyCount(); ++i) {
    const QStringList texts = texts_of(meta->property(i).read(&all));
    EXPECT_FALSE(texts.isEmpty()) << meta->property(i).name();
    for (const QString& text : texts) {
      ++count;
      EXPECT_FALSE(text.trimmed().isEmpty()) << meta->property(i).name();
      EXPECT_EQ(found_in(text), "") << text.toStdString();
    }
  }
  for (int i = 0; !words_of(static_cast<Caution>(i)).isEmpty(); ++i, ++count)
    EXPECT_EQ(found_in(words_of(static_cast<Caution>(i))), "");
  EXPECT_GT(count, 60);
}

TEST(CautionWords, NoTextOfTheProgramDoes) {
  int count = 0;
  for (const char* folder : {"qml", "src/screens", "src/app"}) {
    QDirIterator files(QStringLiteral(JAMBLINE_SOURCE_DIR "/") + QLatin1String(folder),
                       {QStringLiteral("*.qml"), QStringLiteral("*.cpp"), QStringLiteral("*.h"),
                        QStringLiteral("*.js")},
                       QDir::Files, QDirIterator::Subdirectories);
    while (files.hasNext()) {
      QFile file(files.next());
      ASSERT_TRUE(file.open(QIODevice::ReadOnly));
      for (const QString& text : translated_in(QString::fromUtf8(file.readAll()))) {
        ++count;
        EXPECT_EQ(found_in(text), "")
            << file.fileName().toStdString() << ": " << text.toStdString();
      }
    }
  }
  EXPECT_GT(count, 1500) << "the texts are not found any more";
}

}  // namespace
}  // namespace jambline::screens
