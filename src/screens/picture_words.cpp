#include "screens/picture_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <array>

#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr auto photo_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "good"), QT_TRANSLATE_NOOP("words", "blurred"),
     QT_TRANSLATE_NOOP("words", "too dark"), QT_TRANSLATE_NOOP("words", "too bright"),
     QT_TRANSLATE_NOOP("words", "black or white in parts"),
     QT_TRANSLATE_NOOP("words", "too small")});

constexpr auto photo_advice = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", ""),
     QT_TRANSLATE_NOOP("words", "Hold the phone against the panel, or still."),
     QT_TRANSLATE_NOOP("words", "Bring light to it, from the side."),
     QT_TRANSLATE_NOOP("words", "Turn the light away from it."),
     QT_TRANSLATE_NOOP("words", "Stand so that no lamp shines back."),
     QT_TRANSLATE_NOOP("words", "Go closer, or take it with the full camera.")});

constexpr auto from_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "camera"), QT_TRANSLATE_NOOP("words", "file"),
     QT_TRANSLATE_NOOP("words", "watched folder")});

constexpr auto note_words = std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "circle"),
                                                        QT_TRANSLATE_NOOP("words", "arrow"),
                                                        QT_TRANSLATE_NOOP("words", "text")});

constexpr auto without_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "no camera at hand"),
     QT_TRANSLATE_NOOP("words", "cannot be reached now"),
     QT_TRANSLATE_NOOP("words", "taken elsewhere"), QT_TRANSLATE_NOOP("words", "not needed here")});

constexpr auto view_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "front left corner, 2 to 3 m away"),
     QT_TRANSLATE_NOOP("words", "front right corner, 2 to 3 m away"),
     QT_TRANSLATE_NOOP("words", "rear left corner, 2 to 3 m away"),
     QT_TRANSLATE_NOOP("words", "rear right corner, 2 to 3 m away"),
     QT_TRANSLATE_NOOP("words", "from the seat"),
     QT_TRANSLATE_NOOP("words", "square to the label, so that it can be read"),
     QT_TRANSLATE_NOOP("words", "the whole panel, 2 to 3 m away"),
     QT_TRANSLATE_NOOP("words", "20 to 40 cm away, a landmark in the picture"),
     QT_TRANSLATE_NOOP("words", "light from the side, low over the panel"),
     QT_TRANSLATE_NOOP("words", "along the edge, low and close"),
     QT_TRANSLATE_NOOP("words", "the open jamb, from corner to corner"),
     QT_TRANSLATE_NOOP("words", "square to the gap, scale at the edge"),
     QT_TRANSLATE_NOOP("words", "from below, or the back of it")});

constexpr auto wanted_words = std::to_array<const char*>(
    {QT_TRANSLATE_NOOP("words", "once a car"), QT_TRANSLATE_NOOP("words", "on each panel"),
     QT_TRANSLATE_NOOP("words", "on each panel that opens"),
     QT_TRANSLATE_NOOP("words", "of each kind of mark"),
     QT_TRANSLATE_NOOP("words", "when there is one")});

constexpr auto usual_names =
    std::to_array<const char*>({QT_TRANSLATE_NOOP("words", "front left corner"),
                                QT_TRANSLATE_NOOP("words", "front right corner"),
                                QT_TRANSLATE_NOOP("words", "rear right corner"),
                                QT_TRANSLATE_NOOP("words", "rear left corner"),
                                QT_TRANSLATE_NOOP("words", "dash lit"),
                                QT_TRANSLATE_NOOP("words", "VIN"),
                                QT_TRANSLATE_NOOP("words", "old damage"),
                                QT_TRANSLATE_NOOP("words", "interior"),
                                QT_TRANSLATE_NOOP("words", "hidden damage"),
                                QT_TRANSLATE_NOOP("words", "missing clips"),
                                QT_TRANSLATE_NOOP("words", "labelled bags"),
                                QT_TRANSLATE_NOOP("words", "gaps"),
                                QT_TRANSLATE_NOOP("words", "hinge and latch marks"),
                                QT_TRANSLATE_NOOP("words", "welds before sealer"),
                                QT_TRANSLATE_NOOP("words", "seam"),
                                QT_TRANSLATE_NOOP("words", "flange"),
                                QT_TRANSLATE_NOOP("words", "back"),
                                QT_TRANSLATE_NOOP("words", "guide coat"),
                                QT_TRANSLATE_NOOP("words", "blocked primer"),
                                QT_TRANSLATE_NOOP("words", "spray-out on the car, daylight"),
                                QT_TRANSLATE_NOOP("words", "edge run"),
                                QT_TRANSLATE_NOOP("words", "jamb"),
                                QT_TRANSLATE_NOOP("words", "opening"),
                                QT_TRANSLATE_NOOP("words", "glass edge"),
                                QT_TRANSLATE_NOOP("words", "lamp pocket"),
                                QT_TRANSLATE_NOOP("words", "booth gauge"),
                                QT_TRANSLATE_NOOP("words", "mix label"),
                                QT_TRANSLATE_NOOP("words", "thermometer on the panel"),
                                QT_TRANSLATE_NOOP("words", "mark"),
                                QT_TRANSLATE_NOOP("words", "worst mark"),
                                QT_TRANSLATE_NOOP("words", "redo evidence"),
                                QT_TRANSLATE_NOOP("words", "before"),
                                QT_TRANSLATE_NOOP("words", "after leveling, dull"),
                                QT_TRANSLATE_NOOP("words", "after the finish"),
                                QT_TRANSLATE_NOOP("words", "side light"),
                                QT_TRANSLATE_NOOP("words", "probe marks"),
                                QT_TRANSLATE_NOOP("words", "weatherstrip seat"),
                                QT_TRANSLATE_NOOP("words", "clips"),
                                QT_TRANSLATE_NOOP("words", "connectors"),
                                QT_TRANSLATE_NOOP("words", "flange primed"),
                                QT_TRANSLATE_NOOP("words", "bead"),
                                QT_TRANSLATE_NOOP("words", "set glass"),
                                QT_TRANSLATE_NOOP("words", "gap and flush, scale at the edge"),
                                QT_TRANSLATE_NOOP("words", "report"),
                                QT_TRANSLATE_NOOP("words", "target setup"),
                                QT_TRANSLATE_NOOP("words", "sun or side light"),
                                QT_TRANSLATE_NOOP("words", "jambs"),
                                QT_TRANSLATE_NOOP("words", "seams"),
                                QT_TRANSLATE_NOOP("words", "glass"),
                                QT_TRANSLATE_NOOP("words", "repaired panel"),
                                QT_TRANSLATE_NOOP("words", "odometer"),
                                QT_TRANSLATE_NOOP("words", "complaint")});

template <std::size_t N, class E>
QString picture_word(const std::array<const char*, N>& words, E value) {
  return QCoreApplication::translate("words", words[static_cast<std::size_t>(value)]);
}
}  // namespace

QString words_of(trade::PhotoWord photo_word) {
  return picture_word(photo_words, photo_word);
}
QString advice_of(trade::PhotoWord photo_word) {
  return photo_word == trade::PhotoWord::Good ? QString() : picture_word(photo_advice, photo_word);
}
QString words_of(job::PictureFrom from) {
  return picture_word(from_words, from);
}
QString words_of(job::PictureNoteShape shape) {
  return picture_word(note_words, shape);
}
QString words_of(job::WithoutShots reason) {
  return picture_word(without_words, reason);
}
QString words_of(job::ShotView view) {
  return picture_word(view_words, view);
}
QString words_of(job::ShotWanted wanted) {
  return picture_word(wanted_words, wanted);
}

QString name_of(const job::Shot& shot) {
  for (const char* usual : usual_names)
    if (shot.shot_name == usual) return QCoreApplication::translate("words", usual);
  return QString::fromStdString(shot.shot_name);
}

QString edges_words(const std::vector<job::DefectKind>& finds) {
  if (finds.empty()) return QCoreApplication::translate("words", "clean");
  QStringList out;
  for (const auto find : finds) out << words_of(find);
  return out.join(QStringLiteral(", "));
}

}  // namespace jambline::screens
