#include "app/jambline/refusal.h"

#include <QStringList>

#include "screens/words.h"

namespace jambline::app {

namespace {
QString details_of(const Error& error, const std::filesystem::path& folder) {
  const auto name = code_name(error.code);
  QStringList lines{QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())),
                    QString::fromStdString(folder.string()),
                    QString::fromStdString(error.operation), QString::fromStdString(error.subject)};
  for (const auto& [arg, value] : error.args)
    lines << QString::fromStdString(arg) + QStringLiteral(": ") + QString::fromStdString(value);
  lines.removeAll(QString());
  return lines.join(QChar('\n'));
}
}  // namespace

std::unique_ptr<QQmlApplicationEngine> refusal_window(const Error& error,
                                                      const std::filesystem::path& folder,
                                                      bool dark) {
  const screens::ErrorWords words = screens::words_of(error);
  auto qml = std::make_unique<QQmlApplicationEngine>();
  qml->addImportPath(QStringLiteral("qrc:/qt/qml"));
  qml->setInitialProperties({{QStringLiteral("what"), words.what},
                             {QStringLiteral("kept"), words.kept},
                             {QStringLiteral("todo"), words.todo},
                             {QStringLiteral("details"), details_of(error, folder)},
                             {QStringLiteral("dark"), dark}});
  qml->load(QUrl(QStringLiteral("qrc:/qt/qml/Jambline/Shell/ErrorWindow.qml")));
  return qml;
}

}  // namespace jambline::app
