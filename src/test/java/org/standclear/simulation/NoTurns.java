package org.standclear.simulation;

import org.springframework.beans.factory.config.BeanFactoryPostProcessor;
import org.springframework.beans.factory.support.BeanDefinitionRegistry;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.scheduling.config.TaskManagementConfigUtils;

/** Nothing happens by itself, by the machine's clock: what the application does in turns, a term does as acts. */
@TestConfiguration(proxyBeanMethods = false)
class NoTurns {

    @Bean
    static BeanFactoryPostProcessor noTurns() {
        return factory -> ((BeanDefinitionRegistry) factory)
                .removeBeanDefinition(TaskManagementConfigUtils.SCHEDULED_ANNOTATION_PROCESSOR_BEAN_NAME);
    }
}
