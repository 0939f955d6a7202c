#include "screens/question_view_model.h"

#include <QDate>
#include <QDir>
#include <QLocale>
#include <QPointer>
#include <QSaveFile>
#include <QUrl>

#include "base/zones.h"
#include "screens/dirt_words.h"
#include "screens/rate_units.h"
#include "screens/text.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using folds::Question;

constexpr int most_bars = 12;
constexpr int most_tables = 200;
constexpr int asked_again_ms = 3000;
constexpr int months_a_year = 12;

int months_of(QuestionViewModel::Span span) {
  return span == QuestionViewModel::Month     ? 1
         : span == QuestionViewModel::Quarter ? 3
                                              : months_a_year;
}
LocalDate first_of(int month) {
  return {month / months_a_year, month % months_a_year + 1, 1};
}

// What is asked, on the calc lane, on values of its own.
struct Asking {
  Question question{};
  int view = 0;
  folds::Period period;
  QuestionSaying saying;
  std::vector<folds::Account> accounts;
  std::shared_ptr<const std::vector<folds::Lesson>> lessons;
};

QuestionPage answered(const Asking& in) {
  const std::string zone = in.saying.zone.toStdString();
  switch (in.question) {
    case Question::Hours:
      return page_of(
          folds::hours_question(in.accounts, static_cast<folds::HoursBy>(in.view), in.period, zone),
          in.saying);
    case Question::Flow:
      return page_of(folds::flow_question(in.accounts, in.period, zone), in.view, in.saying);
    case Question::FirstTime:
      return page_of(folds::first_time_question(in.accounts, in.period, zone), in.view, in.saying);
    case Question::Dirt:
      return page_of(folds::dirt_question(*in.lessons, in.accounts, in.period, zone), in.view,
                     in.saying);
    case Question::Sprays:
      return page_of(folds::spray_question(in.accounts, in.period, zone), in.view, in.saying);
    case Question::Due:
      return page_of(folds::due_question(in.accounts, *in.saying.shop, in.period, in.saying.now_ms),
                     in.saying);
    case Question::Late:
      return page_of(folds::late_question(in.accounts, in.period, zone, in.saying.now_ms), in.view,
                     in.saying);
    case Question::Pictures:
      return page_of(folds::pictures_question(in.accounts, *in.saying.shop, in.period), in.view,
                     in.saying);
  }
  return {};
}

// Written beside and renamed; a file that is there is never written over.
QString write_page(const QString& place, const QString& name, const QString& csv) {
  const QUrl url(place.trimmed());
  const QString folder = url.isLocalFile() ? url.toLocalFile() : place.trimmed();
  const auto refused = [](const QString& cause) {
    return Ask::tr("The table was not written: %1. Nothing is lost.").arg(cause);
  };
  if (folder.isEmpty() || !QDir().mkpath(folder))
    return refused(Ask::tr("the folder cannot be made"));
  for (int number = 1; number <= most_tables; ++number) {
    const QString path = QDir(folder).filePath(
        name + (number > 1 ? QStringLiteral(" (%1)").arg(number) : QString()) +
        QStringLiteral(".csv"));
    if (QFile::exists(path)) continue;
    QSaveFile file(path);
    const QByteArray bytes = csv.toUtf8();
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit())
      return refused(file.errorString());
    return Ask::tr("Written: %1").arg(QDir::toNativeSeparators(path));
  }
  return refused(Ask::tr("the folder is full of such tables"));
}
}  // namespace

QuestionViewModel::QuestionViewModel(Session& session, QString place, QObject* parent)
    : QObject(parent),
      session_(session),
      place_(std::move(place)),
      questions_({"key", "title", "says"}, this),
      bars_({"key", "words", "solid", "hatched", "barWords"}, this),
      rows_({"key", "title", "numbers", "note", "alarm", "cars", "one", "two", "three", "four",
             "spoken"},
            this),
      cases_({"key", "job", "entry", "plate", "when", "words", "spoken"}, this) {
  std::vector<QVariantList> rows;
  for (std::size_t i = 0; i < enum_words<Question>.size(); ++i) {
    const auto question = static_cast<Question>(i);
    rows.push_back({text(word_of(question)), question_title(question), question_says(question)});
  }
  questions_.set(std::move(rows));
  later_.setSingleShot(true);
  later_.setInterval(asked_again_ms);
  connect(&later_, &QTimer::timeout, this, &QuestionViewModel::ask);
  connect(&session_, &Session::snapshotChanged, this, &QuestionViewModel::heard);
  connect(&session_, &Session::unitsChanged, this, &QuestionViewModel::ask);
  connect(&session_, &Session::personChanged, this, [this] {
    if (view_ >= std::max<int>(1, static_cast<int>(views().size()))) showView(0);
    emit changed();
  });
}

QuestionViewModel::~QuestionViewModel() {
  stop_.request_stop();
}

bool QuestionViewModel::is_manager() const {
  const auto* person = session_.shop().find(session_.person());
  return person && person->role == job::Role::Manager;
}

int QuestionViewModel::month_now() const {
  const auto date = local_date_at(session_.zone().toStdString(), session_.now().wall_ms);
  return date ? date->year * months_a_year + date->month - 1 : 0;
}

int QuestionViewModel::first_month() const {
  return month_ - month_ % months_of(span_);
}

folds::Period QuestionViewModel::period() const {
  const std::string zone = session_.zone().toStdString();
  const auto from = local_day(zone, first_of(first_month()));
  const auto to = local_day(zone, first_of(first_month() + months_of(span_)));
  return from && to ? folds::Period{from->start_ms, to->start_ms} : folds::Period{0, 0};
}

QString QuestionViewModel::timeTitle() const {
  const LocalDate first = first_of(first_month());
  if (span_ == Year) return QString::number(first.year);
  if (span_ == Month)
    return QLocale().standaloneMonthName(first.month) + QChar(' ') + QString::number(first.year);
  return tr("%1 to %2 %3")
      .arg(QLocale().standaloneMonthName(first.month, QLocale::ShortFormat),
           QLocale().standaloneMonthName(first.month + 2, QLocale::ShortFormat))
      .arg(first.year);
}

bool QuestionViewModel::isNow() const {
  const int now = month_now();
  return now >= first_month() && now < first_month() + months_of(span_);
}

QuestionSaying QuestionViewModel::saying() const {
  return {session_.units(), session_.zone(), session_.now().wall_ms, session_.snapshot().shop};
}

void QuestionViewModel::wake() {
  awake_ = true;
  if (month_ == 0) month_ = month_now();
  ask();
}

void QuestionViewModel::rest() {
  awake_ = false;
  later_.stop();
  stop_.request_stop();
}

void QuestionViewModel::choose(const QString& question) {
  const auto wanted = from_word<Question>(question.toStdString());
  if (!wanted) return;
  if (*wanted != question_) {
    question_ = *wanted;
    view_ = 0;
    state_ = Waiting;
    page_ = std::make_shared<QuestionPage>();
    emit changed();  // the page lets go of its rows before they go
    show_rows();
  }
  written_.clear();
  closeRow();
  ask();
  emit changed();
}

void QuestionViewModel::showView(int view) {
  if (view < 0 || view >= std::max<int>(1, static_cast<int>(views().size()))) return;
  view_ = view;
  written_.clear();
  closeRow();
  ask();
  emit changed();
}

void QuestionViewModel::showSpan(int span) {
  if (span < Month || span > Year) return;
  span_ = static_cast<Span>(span);
  turn(0);
}

void QuestionViewModel::turn(int by) {
  month_ =
      std::clamp(first_month() + by * months_of(span_), 1970 * months_a_year, 9000 * months_a_year);
  if (by == 0 && isNow()) month_ = month_now();
  written_.clear();
  closeRow();
  ask();
  emit changed();
}

void QuestionViewModel::toNow() {
  month_ = month_now();
  turn(0);
}

// A new snapshot: perhaps because an entry was written or has come.
void QuestionViewModel::heard() {
  const std::uint64_t number = session_.snapshot().number;
  if (number == heard_) return;
  heard_ = number;
  if (!awake_) return;
  if (question_ == Question::Dirt && state_ == Waiting && session_.snapshot().lessons)
    ask();  // they have come
  else if (!later_.isActive())
    later_.start();
}

void QuestionViewModel::ask() {
  if (!awake_) return;
  stop_.request_stop();
  stop_ = std::stop_source();
  if (question_ == Question::Dirt && !session_.snapshot().lessons) session_.engine().want_lessons();
  const auto time = period();
  const int generation = ++generation_;
  session_.engine().accounts(
      time.from_ms, time.to_ms, stop_.get_token(),
      [self = QPointer(this), generation](Result<std::vector<folds::Account>> accounts) {
        QMetaObject::invokeMethod(
            QCoreApplication::instance(),
            [self, generation, accounts = std::move(accounts)]() mutable {
              if (!self || generation != self->generation_) return;
              if (accounts) {
                self->answer_with(std::move(*accounts), generation);
                return;
              }
              self->state_ = Failed;
              self->trouble_ = words_of(accounts.error()).what;
              emit self->changed();
            },
            Qt::QueuedConnection);
      });
}

void QuestionViewModel::answer_with(std::vector<folds::Account> accounts, int generation) {
  const auto lessons = session_.snapshot().lessons;
  if (question_ == Question::Dirt && !lessons) return;  // asked again when they have come
  auto in = std::make_shared<Asking>(
      Asking{question_, view_, period(), saying(), std::move(accounts), lessons});
  session_.calculate(this, [this, in, generation]() -> std::function<void()> {
    return [this, generation, page = std::make_shared<const QuestionPage>(answered(*in))] {
      if (generation == generation_) take(page);
    };
  });
}

void QuestionViewModel::take(std::shared_ptr<const QuestionPage> page) {
  page_ = std::move(page);
  state_ = page_->rows.empty() ? Nothing : Shown;
  trouble_.clear();
  if (page_->rows.empty()) emit changed();
  show_rows();
  show_cases();
  emit changed();
}

void QuestionViewModel::show_rows() {
  std::vector<QVariantList> bars;
  std::vector<QVariantList> rows;
  most_ = 0;
  for (const auto& row : page_->rows) {
    const bool drawn = row.bar && static_cast<int>(bars.size()) < most_bars;
    if (drawn) {
      bars.push_back({row.key, row.title, *row.bar, row.ghost.value_or(-1), row.bar_words});
      most_ = std::max({most_, *row.bar, row.ghost.value_or(0)});
    }
    QStringList cells = row.cells;
    while (cells.size() < 4) cells << QString();
    const int cars = folds::cars_of(row.cases);
    rows.push_back({row.key, row.title, row.numbers, row.note, row.alarm,
                    cars > 0 ? cars_words(cars) : QString(), cells[0], cells[1], cells[2], cells[3],
                    tr("%1: %2. %3").arg(row.title, row.numbers, row.note)});
  }
  bars_.set(std::move(bars));
  rows_.set(std::move(rows));
}

QString QuestionViewModel::moreWords() const {
  const int more = static_cast<int>(page_->rows.size()) - bars_.rowCount();
  if (bars_.rowCount() < most_bars || more <= 0) return {};
  return more == 1 ? tr("1 more below") : tr("%1 more below").arg(more);
}

QString QuestionViewModel::emptyWords() const {
  if (state_ == Failed) return trouble_;
  return state_ == Waiting ? tr("The cars are being read.") : page_->nothing;
}

const QuestionRow* QuestionViewModel::open_row() const {
  for (const auto& row : page_->rows)
    if (!open_.isNull() && row.key == open_) return &row;
  return nullptr;
}

QString QuestionViewModel::openTitle() const {
  const auto* row = open_row();
  return row ? row->title : QString();
}
QString QuestionViewModel::openNote() const {
  const auto* row = open_row();
  return row ? row->numbers + dot + row->note : QString();
}

void QuestionViewModel::openRow(const QString& row) {
  open_ = row.isNull() ? QStringLiteral("") : row;
  show_cases();
}

void QuestionViewModel::closeRow() {
  open_ = QString();
  show_cases();
}

void QuestionViewModel::show_cases() {
  std::vector<QVariantList> rows;
  if (const auto* open = open_row()) {
    int number = 0;
    for (const auto& one : open->cases) {
      const QString plate = one.plate.empty() ? tr("A car without a plate") : text(one.plate);
      const QString when = date_words(one.at_ms, session_.now().wall_ms, session_.zone());
      const QString words = case_words(one, open->unit, session_.units());
      rows.push_back({QString::number(number++), hex(one.job),
                      one.entry ? hex(*one.entry) : QString(), plate, when, words,
                      tr("%1, %2, %3").arg(plate, when, words)});
    }
  }
  cases_.set(std::move(rows));
  emit openChanged();
}

void QuestionViewModel::writeTable(const QString& place) {
  if (page_->rows.empty()) return;
  written_ = tr("It is being written.");
  emit changed();
  QString name = title() + QChar(' ') + timeTitle();
  if (view_ < views().size()) name += QChar(' ') + views().at(view_);
  name.replace(QChar('/'), QChar('-'));
  session_.calculate(this, [this, place, name, page = page_]() -> std::function<void()> {
    return [this, said = write_page(place, name, page_csv(*page))] {
      written_ = said;
      emit changed();
    };
  });
}

}  // namespace jambline::screens
