#include <QFontDatabase>
#include <QGuiApplication>
#include <QLocale>
#include <QSocketNotifier>
#include <QStandardPaths>
#include <QStyleHints>
#include <QTemporaryDir>
#include <cstdio>
#include <optional>
#include <unistd.h>

#include "app/demo/demo_shop.h"
#include "app/demo_pictures/drawn_camera.h"
#include "app/jambline/pictures.h"
#include "app/jambline/program.h"
#include "app/jambline/refusal.h"
#include "device/camera.h"
#include "engine/restore.h"
#include "screens/words.h"

namespace {
using namespace jambline;

int warnings = 0;

void count_warnings(QtMsgType type, const QMessageLogContext& context, const QString& text) {
  if (type != QtDebugMsg && type != QtInfoMsg) ++warnings;
  std::fprintf(stderr, "%s: %s\n", context.category, qPrintable(text));
}

void print(const Error& error) {
  const screens::ErrorWords words = screens::words_of(error);
  std::fprintf(stderr, "%s\n%s\n%s\n", qPrintable(words.what), qPrintable(words.kept),
               qPrintable(words.todo));
}

int show_refusal(const Error& error, const std::filesystem::path& folder, bool dark) {
  print(error);
  const auto window = app::refusal_window(error, folder, dark);
  if (!window->rootObjects().isEmpty()) QGuiApplication::exec();
  return 1;
}

std::filesystem::path own_folder() {
  return QStandardPaths::writableLocation(QStandardPaths::AppDataLocation).toStdString();
}
}  // namespace

int main(int argc, char** argv) {
  std::optional<int> leave;
  const app::Options options = app::read_options(argc, argv, leave);
  if (leave) return *leave;
  const bool unseen = options.self_test || !options.pictures.empty();
  if (unseen) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    if (qEnvironmentVariableIsEmpty("QT_QUICK_BACKEND")) qputenv("QT_QUICK_BACKEND", "software");
  }

  QGuiApplication gui(argc, argv);
  device::find_cameras();
  // From here on: what the platform says of its own surroundings before is not ours.
  if (options.self_test) qInstallMessageHandler(count_warnings);
  QGuiApplication::setApplicationName(QStringLiteral("jambline"));
  QGuiApplication::setApplicationDisplayName(QStringLiteral("Jambline"));
  QGuiApplication::setDesktopFileName(QStringLiteral("jambline"));
  QGuiApplication::setApplicationVersion(QStringLiteral(JAMBLINE_VERSION));
  QGuiApplication::styleHints()->setStartDragDistance(16);
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));

  // Pictures are of one invented evening, so that they come out the same each time.
  SystemClock machine;
  FakeClock evening;
  demo::DemoOptions shop;
  evening.moment = shop.now;
  const bool still = options.demo && unseen;
  const Clock& clock = still ? static_cast<const Clock&>(evening) : machine;
  if (!still) shop.now = machine.now();

  QTemporaryDir thrown_away;
  std::filesystem::path folder = options.folder.empty() ? own_folder() : options.folder;
  if (options.demo) {
    if (!thrown_away.isValid()) {
      std::fprintf(stderr, "No throw-away folder: %s\n", qPrintable(thrown_away.errorString()));
      return 1;
    }
    folder = thrown_away.path().toStdString();
    auto camera = demo::drawn_camera(folder);
    if (camera) shop.camera = std::move(*camera);
    const Status made = camera ? demo::make_shop(folder, shop) : Status(fail(camera.error()));
    if (!made)
      return unseen ? (print(made.error()), 1) : show_refusal(made.error(), folder, options.dark);
  }
  std::error_code ignored;  // what is wrong with the folder is said when it is opened
  std::filesystem::create_directories(folder, ignored);

  if (!options.restore.empty()) {
    const auto restored = engine::restore_shop(options.restore, folder);
    if (!restored) return print(restored.error()), 1;
    std::printf("%llu entries taken in\n", static_cast<unsigned long long>(restored->entries));
  }
  std::optional<QSocketNotifier> input;
  if (options.ends_with_input) {
    input.emplace(STDIN_FILENO, QSocketNotifier::Read);
    QObject::connect(&*input, &QSocketNotifier::activated, &gui, [] {
      char byte = 0;
      if (read(STDIN_FILENO, &byte, 1) == 0) QGuiApplication::quit();
    });
  }
  while (true) {
    auto program = app::Program::open(folder, clock, options);
    if (!program)
      return unseen ? (print(program.error()), 1)
                    : show_refusal(program.error(), folder, options.dark);
    if (!(*program)->show()) return 1;
    if (options.self_test) {
      const bool good = app::visit_screens(**program);
      program->reset();
      if (!good) std::fprintf(stderr, "A screen did not come.\n");
      std::fprintf(stderr, "%d warnings\n", warnings);
      return good && warnings == 0 ? 0 : 1;
    }
    if (!options.pictures.empty()) {
      const auto drawn = app::draw_pictures(**program, options.pictures);
      if (!drawn) return print(drawn.error()), 1;
      std::printf("%d pictures\n", *drawn);
      return 0;
    }
    if (const int ended = QGuiApplication::exec(); ended != app::open_again) return ended;
  }
}
