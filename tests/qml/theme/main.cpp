#include <QLocale>
#include <QQmlEngine>
#include <QQmlExtensionPlugin>
#include <QtQuickTest>

Q_IMPORT_QML_PLUGIN(Jambline_ThemePlugin)

class Setup : public QObject {
  Q_OBJECT
 public slots:
  void applicationAvailable() {
    QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
  }
  void qmlEngineAvailable(QQmlEngine* engine) {
    engine->addImportPath(QStringLiteral("qrc:/qt/qml"));
  }
};

QUICK_TEST_MAIN_WITH_SETUP(theme, Setup)

#include "main.moc"
