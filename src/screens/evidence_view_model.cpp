#include "screens/evidence_view_model.h"

#include <QLocale>
#include <algorithm>

#include "folds/dirt_of_car.h"
#include "screens/correct_words.h"
#include "screens/panel_rows.h"
#include "screens/state_kind.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr std::size_t least_signs = 3;

const QByteArrayList& sign_roles() {
  static const QByteArrayList roles{"key",    "title",    "note",   "chance", "position",
                                    "points", "pointsTo", "lookAt", "chosen"};
  return roles;
}

// Everything that a car may differ in from one look to the next; outlines follow from the job.
bool asks_the_same(const trade::DirtPattern& a, const trade::DirtPattern& b) {
  const auto history = [](const std::optional<trade::FlatHistory>& one) {
    return one ? std::vector<double>{static_cast<double>(one->flat_marks), one->flat_m2,
                                     static_cast<double>(one->upright_marks), one->upright_m2}
               : std::vector<double>{};
  };
  return a.seed == b.seed && history(a.history) == history(b.history) &&
         std::equal(a.panels.begin(), a.panels.end(), b.panels.begin(), b.panels.end(),
                    [](const auto& one, const auto& other) {
                      return one.panel == other.panel && one.plastic == other.plastic &&
                             one.all_over == other.all_over && one.marks == other.marks;
                    });
}

QString key_of(const trade::DirtEvidence& sign) {
  return QString::fromStdString(std::string(word_of(sign.sign)) + ":" + sign.panel);
}
}  // namespace

EvidenceViewModel::EvidenceViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      number_(std::make_shared<std::atomic<std::uint64_t>>(0)),
      signs_(sign_roles(), this),
      other_signs_(sign_roles(), this),
      clues_({"key", "title", "note", "pointsTo", "lookAt"}, this),
      causes_({"key", "title", "icon", "chosen", "pointed"}, this),
      sum_(this) {
  connect(&session, &Session::snapshotChanged, this, &EvidenceViewModel::refresh);
  connect(&session, &Session::unitsChanged, this, &EvidenceViewModel::show_signs);
  refresh();
}

EvidenceViewModel::~EvidenceViewModel() {
  ++*number_;
}

void EvidenceViewModel::setShown(bool shown) {
  if (shown == shown_) return;
  shown_ = shown;
  if (!shown) showPanel({});
  car_.reset();
  refresh();
  if (shown && word_ == Word::Points) showSign(key_of(result_->evidence.front()));
}

void EvidenceViewModel::forget() {
  ++*number_;
  asked_.reset();
  result_.reset();
  refused_.reset();
  seen_.clear();
  word_ = Word::None;
  has_picked_ = false;
  chosen_sign_.clear();
  map_panel_.clear();
}

void EvidenceViewModel::refresh() {
  const auto* car = session_.car();
  if (!car || car->job != job_) forget();
  job_ = car ? car->job : JobId{};
  const auto& snapshot = session_.snapshot();
  if (car && snapshot.car == car_ && snapshot.lessons == lessons_) {
    emit changed();  // who acts, the zone or a word
    return;
  }
  car_ = car ? snapshot.car : nullptr;
  lessons_ = snapshot.lessons;
  all_looked_at_ = false;
  bool dirty = false;
  if (car) {
    bool open = car->panels.empty();
    for (const auto& panel : car->panels) {
      if (!folds::face_was_sprayed(panel.plan)) continue;
      open = open || panel.verdict == job::Verdict::NotLookedAt;
      dirty = dirty || panel.dirt != job::DirtClass::None ||
              std::any_of(panel.marks.begin(), panel.marks.end(), folds::is_dirt);
    }
    all_looked_at_ = !open;
  }
  ready_ = car && ((dirty && all_looked_at_) || car->cause);
  if (car && (ready_ || shown_)) {
    if (!lessons_wanted_) session_.engine().want_lessons();
    lessons_wanted_ = true;
    const auto history = lessons_ ? folds::flat_history(*lessons_, car->job) : std::nullopt;
    auto pattern = folds::dirt_of_car(*car, job::pattern(car->body), history);
    seen_ = clues_of(*car);
    if (!asked_ || !asks_the_same(*asked_, pattern)) ask(std::move(pattern));
  }
  show_signs();
}

void EvidenceViewModel::ask(trade::DirtPattern pattern) {
  const std::uint64_t number = ++*number_;
  asked_ = pattern;
  result_.reset();
  refused_.reset();
  chosen_sign_.clear();
  if (pattern.panels.empty()) {
    word_ = Word::None;
    return;
  }
  word_ = Word::Working;
  session_.calculate(
      this,
      [this, number, newest = number_, asked = std::move(pattern)]() -> std::function<void()> {
        if (*newest != number) return [] {};
        return [this, number, judged = trade::dirt_pattern(asked)] { take(number, judged); };
      });
}

void EvidenceViewModel::take(std::uint64_t number, const Result<trade::DirtPatternResult>& judged) {
  if (*number_ != number) return;
  if (!judged) {
    refused_ = judged.error();
    word_ = Word::Refused;
  } else {
    result_ = *judged;
    word_ = judged->word == trade::DirtWord::Points   ? Word::Points
            : judged->word == trade::DirtWord::TooFew ? Word::TooFew
                                                      : Word::Chance;
    if (word_ == Word::TooFew && marks_of_car() == 0) word_ = Word::None;
  }
  show_signs();
  if (word_ == Word::Points && map_panel_.isEmpty() && shown_)
    showSign(key_of(result_->evidence.front()));
}

void EvidenceViewModel::show_signs() {
  std::vector<QVariantList> first, rest;
  if (result_) {
    for (const auto& one : result_->evidence) {
      const bool points = one.holm_chance < trade::dirt_level;
      const ClueWords words = words_of(clue_of(one, *asked_));
      QVariantList row{key_of(one),
                       title_of(one),
                       note_of(one, marks_on(one.panel), session_.units()),
                       points ? chance_words(100 * one.holm_chance) : tr("weak"),
                       line_at(one.holm_chance),
                       points,
                       words.points_to,
                       words.look_at,
                       key_of(one) == chosen_sign_};
      (points || first.size() < least_signs ? first : rest).push_back(std::move(row));
    }
  }
  signs_.set(std::move(first));
  other_signs_.set(std::move(rest));
  std::vector<QVariantList> clues;
  for (const auto& one : seen_) {
    const ClueWords words = words_of(one.clue);
    clues.push_back({static_cast<int>(one.clue), sentence(words.title), note_of(one),
                     words.points_to, words.look_at});
  }
  clues_.set(std::move(clues));
  show_causes();
  emit drawingChanged();
  emit changed();
}

void EvidenceViewModel::show_causes() {
  std::vector<QVariantList> rows;
  const auto first = pointed();
  const auto chosen = picked();
  const auto add = [&](job::DirtCause cause, bool is_pointed) {
    rows.push_back(
        {QString::fromUtf8(word_of(cause).data(), static_cast<qsizetype>(word_of(cause).size())),
         sentence(words_of(cause)), icon_of(cause), chosen == cause, is_pointed});
  };
  for (const auto cause : first) add(cause, true);
  for (std::size_t i = 0; i < enum_words<job::DirtCause>.size(); ++i) {
    const auto cause = static_cast<job::DirtCause>(i);
    if (std::find(first.begin(), first.end(), cause) == first.end()) add(cause, false);
  }
  causes_.set(std::move(rows));
}

std::vector<job::DirtCause> EvidenceViewModel::pointed() const {
  std::vector<job::DirtCause> out;
  const auto add = [&](Clue clue) {
    for (const auto cause : causes_of(clue))
      if (std::find(out.begin(), out.end(), cause) == out.end()) out.push_back(cause);
  };
  if (result_)
    for (const auto& one : result_->evidence)
      if (one.holm_chance < trade::dirt_level) add(clue_of(one, *asked_));
  for (const auto& one : seen_) add(one.clue);
  return out;
}

QString EvidenceViewModel::name_of(const std::string& panel) const {
  const auto* car = session_.car();
  const auto name = from_word<job::Panel>(panel);
  return car && name ? words_of(*name, car->body) : QString();
}

QString EvidenceViewModel::title_of(const trade::DirtEvidence& sign) const {
  const QString words = words_of(clue_of(sign, *asked_)).title;
  return sign.panel.empty() ? sentence(words)
                            : tr("%1: %2").arg(sentence(name_of(sign.panel)), words);
}

int EvidenceViewModel::marks_on(const std::string& panel) const {
  if (result_)
    for (const auto& one : result_->panels)
      if (one.panel == panel) return one.marks;
  return 0;
}

int EvidenceViewModel::marks_of_car() const {
  std::size_t all = 0;
  if (asked_)
    for (const auto& panel : asked_->panels) all += panel.marks.size();
  return static_cast<int>(all);
}

QString EvidenceViewModel::countWords() const {
  if (!asked_) return {};
  const int marks = marks_of_car();
  const auto on = std::count_if(asked_->panels.begin(), asked_->panels.end(),
                                [](const auto& panel) { return !panel.marks.empty(); });
  const QString found = marks == 1 ? tr("1 mark") : tr("%1 marks").arg(marks);
  if (!all_looked_at_) return tr("%1 so far").arg(found);
  if (marks == 0) return tr("no marks");
  return on == 1 ? tr("%1, 1 panel").arg(found) : tr("%1, %2 panels").arg(found).arg(on);
}

QString EvidenceViewModel::answer() const {
  switch (word_) {
    case Word::None:
      return seen_.empty() ? tr("No dirt is marked")
                           : tr("Points to %1").arg(words_of(seen_.front().clue).points_to);
    case Word::Working:
      return tr("Holding %1 against chance").arg(countWords());
    case Word::TooFew:
      return marks_of_car() == 1 ? tr("Too few to say: 1 mark")
                                 : tr("Too few to say: %1 marks").arg(marks_of_car());
    case Word::Chance:
      return tr("Looks like chance");
    case Word::Points:
      return tr("Points to %1")
          .arg(words_of(clue_of(result_->evidence.front(), *asked_)).points_to);
    case Word::Refused:
      break;
  }
  return tr("This cannot be worked out");
}

QString EvidenceViewModel::lookAt() const {
  switch (word_) {
    case Word::None:
      return seen_.empty() ? tr("Marks of nibs and craters stand here once they are placed.")
                           : tr("Look at %1.").arg(words_of(seen_.front().clue).look_at);
    case Word::Working:
      return {};
    case Word::TooFew:
      return tr("%1 or more on a car, or %2 on one panel, can say something.")
          .arg(trade::dirt_least_on_car)
          .arg(trade::dirt_least_on_panel);
    case Word::Chance:
      return tr("The normal level. Tack and floor are worth a look.");
    case Word::Points:
      return tr("Look at %1.").arg(words_of(clue_of(result_->evidence.front(), *asked_)).look_at);
    case Word::Refused:
      break;
  }
  if (refused_ && refused_->code == Code::TooLarge)
    return tr("A panel has over 500 marks. Say dirt all over instead.");
  return tr("The marks stand. The cause can be set all the same.");
}

int EvidenceViewModel::answerShape() const {
  return shape_of(word_ == Word::Points    ? StateKind::Must
                  : word_ == Word::Working ? StateKind::Running
                  : word_ == Word::Chance  ? StateKind::Done
                                           : StateKind::NotYet);
}

QString EvidenceViewModel::rowWords() const {
  const QString said = setWords();
  if (!said.isEmpty()) return said;
  if (word_ == Word::Chance || word_ == Word::Points)
    return tr("%1. %2").arg(countWords(), answer());
  return word_ == Word::Working ? countWords() : answer();
}

const trade::DirtEvidence* EvidenceViewModel::sign(const QString& key) const {
  if (result_ && !key.isEmpty())
    for (const auto& one : result_->evidence)
      if (key_of(one) == key) return &one;
  return nullptr;
}

QString EvidenceViewModel::mapWords() const {
  const auto* one = sign(chosen_sign_);
  if (one) return title_of(*one);
  return map_panel_.isEmpty() ? tr("The whole car") : sentence(name_of(map_panel_.toStdString()));
}

QRectF EvidenceViewModel::mapBox() const {
  const auto* car = session_.car();
  std::optional<trade::Box_mm> box;
  if (car && asked_)
    for (const auto& panel : asked_->panels) {
      const auto name = from_word<job::Panel>(panel.panel);
      const auto* drawn = name ? job::pattern(car->body).find(*name) : nullptr;
      if (!drawn) continue;
      const auto one = trade::bounds(drawn->place.apply(panel.outline));
      box = box ? trade::joined(*box, one) : one;
    }
  return box ? QRectF(box->low.x_mm, box->low.y_mm, box->width_mm(), box->height_mm()) : QRectF();
}

SignDrawing EvidenceViewModel::drawing() const {
  const auto* car = session_.car();
  if (!car || !asked_) return {};
  return sign_drawing(*asked_, job::pattern(car->body), panel_of_word(map_panel_),
                      sign(chosen_sign_));
}

void EvidenceViewModel::showSign(const QString& key) {
  const auto* one = sign(key);
  if (!one || key == chosen_sign_) {
    showPanel({});
    return;
  }
  chosen_sign_ = key;
  map_panel_ = QString::fromStdString(one->panel);
  show_signs();
}

void EvidenceViewModel::showPanel(const QString& panel) {
  map_panel_ = panel_of_word(panel) ? panel : QString();
  chosen_sign_.clear();
  if (result_ && !map_panel_.isEmpty())
    for (const auto& one : result_->evidence)
      if (QString::fromStdString(one.panel) == map_panel_ && chosen_sign_.isEmpty())
        chosen_sign_ = key_of(one);
  show_signs();
}

void EvidenceViewModel::openSum(const QString& key) {
  const auto* one = sign(key);
  if (!one) return;
  const ClueWords words = words_of(clue_of(*one, *asked_));
  const bool points = one->holm_chance < trade::dirt_level;
  sum_.show(title_of(*one), note_of(*one, marks_on(one->panel), session_.units()),
            basis_of(*one, *result_), session_.units(),
            points ? tr("Points to %1. Look at %2.").arg(words.points_to, words.look_at)
                   : tr("Near chance: it points to nothing."));
}

}  // namespace jambline::screens
